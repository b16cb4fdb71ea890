package easewright.mcp;

import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.RoutingContext;

/**
 * An error in the protocol's form: an error object of JSON-RPC 2.0, section 5.1, with the matching
 * HTTP status (Model Context Protocol 2025-11-25, basic/transports, "Sending Messages").
 *
 * @param status the HTTP status
 * @param id of the message it answers; null if none could be read
 * @param code a JSON-RPC code, or one from the range reserved for servers
 * @param message what is wrong and how to fix it
 */
record RpcError(int status, Object id, int code, String message) {
  private static final int UNREADABLE = -32700;
  private static final int INVALID_REQUEST = -32600;
  private static final int INVALID_PARAMS = -32602;
  private static final int OF_THE_SERVER = -32000;

  /** The error for input that is not JSON. */
  static RpcError unreadable(String message) {
    return new RpcError(400, null, UNREADABLE, message);
  }

  /** The error for JSON that is not a message, or exceeds the limits of one. */
  static RpcError noMessage(Object id, String message) {
    return new RpcError(400, id, INVALID_REQUEST, message);
  }

  /** The error for a message with wrong parameters for its method. */
  static RpcError badParameters(Object id, String message) {
    return new RpcError(400, id, INVALID_PARAMS, message);
  }

  /** The error for a well-formed message that is rejected. */
  static RpcError refused(int status, Object id, String message) {
    return new RpcError(status, id, OF_THE_SERVER, message);
  }

  JsonObject json() {
    return new JsonObject()
        .put("jsonrpc", "2.0")
        .put("id", id)
        .put("error", new JsonObject().put("code", code).put("message", message));
  }

  void answer(RoutingContext call) {
    call.response()
        .setStatusCode(status)
        .putHeader(HttpHeaders.CONTENT_TYPE, "application/json")
        .putHeader(HttpHeaders.CACHE_CONTROL, "no-store")
        .end(json().toBuffer());
  }
}
