/**
 * Reads requests: parses JSON in the contract's form and posts in plain words into a fitting, a
 * check or a cut-plan request. Reports every fault with its location, what is wrong and a remedy.
 * Depends on no framework.
 */
package easewright.request;
