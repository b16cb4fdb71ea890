/** The contract in {@code openapi/}: as it is written, as a page to read, and as JSON Schemas. */
package easewright.contract;
