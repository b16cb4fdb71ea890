/**
 * The service as seen from outside: implements the contract in {@code openapi/}, reads requests,
 * names their faults, and puts answers into JSON, Markdown and pages. Decides nothing about fit.
 */
package easewright.api;
