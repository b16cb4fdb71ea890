package easewright.mcp;

import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.RoutingContext;

/**
 * A refusal in the protocol's form: an error object of JSON-RPC 2.0, section 5.1, under the status
 * HTTP has for it (Model Context Protocol 2025-11-25, basic/transports, "Sending Messages").
 *
 * @param status the HTTP status
 * @param id of the message it answers; null where none could be read
 * @param code as JSON-RPC numbers them, or of the range it leaves to servers
 * @param message what is wrong and what would be right
 */
record RpcError(int status, Object id, int code, String message) {
  private static final int UNREADABLE = -32700;
  private static final int INVALID_REQUEST = -32600;
  private static final int INVALID_PARAMS = -32602;
  private static final int OF_THE_SERVER = -32000;

  /** What is no JSON. */
  static RpcError unreadable(String message) {
    return new RpcError(400, null, UNREADABLE, message);
  }

  /** What is JSON but no message, or beyond what a message may be. */
  static RpcError noMessage(Object id, String message) {
    return new RpcError(400, id, INVALID_REQUEST, message);
  }

  /** A message whose parameters are not those of its method. */
  static RpcError badParameters(Object id, String message) {
    return new RpcError(400, id, INVALID_PARAMS, message);
  }

  /** A message that is well formed and is refused nevertheless. */
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
