/**
 * Writes answers: as JSON in the form of the contract, as replies to post, as pages and drawings,
 * and as problems (RFC 9457).
 */
package easewright.saying;
