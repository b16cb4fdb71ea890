/**
 * Filters in front of every HTTP request: connections, concurrent requests, quotas for each client
 * and key, cross-site requests, and the security headers of responses. Reads no request body; of
 * the rest of the service it knows only problems and whether a key is valid.
 */
package easewright.guard;
