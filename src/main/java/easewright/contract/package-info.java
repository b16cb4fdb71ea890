/** The contract in {@code openapi/}: as written, as a page, and as JSON Schemas. */
package easewright.contract;
