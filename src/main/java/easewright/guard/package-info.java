/**
 * Filters in front of every HTTP request: connections, concurrent requests, quotas for each client
 * and key, requests that another site has a browser send, and the security headers of answers.
 * Reads no request body; of the service it knows problems, and whether a key is valid.
 */
package easewright.guard;
