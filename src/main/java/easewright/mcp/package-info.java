/**
 * The service as tools and resources for chat assistants, by the Model Context Protocol (revision
 * 2025-11-25) over HTTP. Every tool takes and returns what the endpoint of the same name does,
 * through {@code answering}; nothing is decided or worded here.
 */
package easewright.mcp;
