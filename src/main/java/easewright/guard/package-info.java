/**
 * Stands before everything that is asked over HTTP and lets in only as much as can be dealt with:
 * how many requests at once, how often from one place, and what a browser may do with the answers.
 * Reads no request; knows problems and nothing else of the service.
 */
package easewright.guard;
