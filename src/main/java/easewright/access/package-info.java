/**
 * Who calls and from where: keys to clinics, addresses of callers, and the service's own address.
 */
package easewright.access;
