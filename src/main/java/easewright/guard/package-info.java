/**
 * Stands before everything that is asked over HTTP and lets in only as much as can be dealt with:
 * how many requests at once, how often from one place or with one key, nothing that another site
 * has a browser send, and what a browser may do with the answers. Reads no request; of the service
 * it knows problems, and whether a key opens something.
 */
package easewright.guard;
