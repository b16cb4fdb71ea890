/**
 * Command line of the same jar: reads a fitting from a file, answers it through {@code answering}
 * and prints the answer, without a server. Without arguments the service starts instead. For rule
 * writers it checks and tries a rule book in a folder, and creates the files of a new rule, without
 * the service.
 */
package easewright.cli;
