/**
 * How long one answer may take. What can run long looks now and then whether its time is up, so no
 * thread has to watch another. Knows nothing of what is being answered.
 */
package easewright.deadline;
