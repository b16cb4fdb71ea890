/**
 * The service as tools and resources for chat assistants, through the Model Context Protocol
 * (revision 2025-11-25) over HTTP. Every tool takes and returns the same as the endpoint of the
 * same name, through {@code answering}; this package makes no decisions and writes no texts.
 */
package easewright.mcp;
