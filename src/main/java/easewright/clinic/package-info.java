/**
 * Clinics, the cases they answer, and their store. Every call has a {@link
 * easewright.clinic.Caller}, who reaches nothing outside the clinic of their key. Body measurements
 * are stored in the rounds of a case and nowhere else.
 */
package easewright.clinic;
