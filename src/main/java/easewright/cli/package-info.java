/**
 * The command line of the same jar, for scripts: reads a fitting from a file, sends it through the
 * service's own resource and prints the answer, without a server. With no arguments the service
 * starts instead. For rule writers it checks, tries and begins rules of a book in a folder, without
 * the service.
 */
package easewright.cli;
