/**
 * How long one answer may take. Code that can run long polls whether its time is up, so no thread
 * has to watch another. Knows nothing of what is being answered.
 */
package easewright.deadline;
