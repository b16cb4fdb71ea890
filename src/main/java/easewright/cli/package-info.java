/**
 * The command line of the same jar, for scripts: reads a fitting from a file, sends it through the
 * service's own resource and prints the answer, without a server. With no arguments the service
 * starts instead.
 */
package easewright.cli;
