/**
 * The service as it is shipped: its jar is started as a process of its own, and programs speak to
 * it from outside. Runs after packaging; nothing here reaches into the service's classes.
 */
package easewright.packaged;
