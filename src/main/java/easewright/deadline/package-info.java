/**
 * The time limit of an answer. Long-running code polls the deadline itself, so no watchdog thread
 * is needed. Knows nothing of what is being answered.
 */
package easewright.deadline;
