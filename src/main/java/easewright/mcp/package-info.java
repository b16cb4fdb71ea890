/**
 * The service as tools and resources for chat assistants, by the Model Context Protocol (revision
 * 2025-11-25) over HTTP. Every tool takes and gives what an endpoint of {@code api} does; decides
 * and words nothing itself.
 */
package easewright.mcp;
