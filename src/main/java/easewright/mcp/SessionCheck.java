package easewright.mcp;

import easewright.access.ClientAddress;
import easewright.saying.Problem;
import io.quarkiverse.mcp.server.JsonRpcErrorCodes;
import io.quarkiverse.mcp.server.ResourceManager;
import io.quarkiverse.mcp.server.runtime.McpMessageHandler;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.json.Json;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.impl.RoutingContextInternal;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Admits messages that belong to a session or properly open one (Model Context Protocol 2025-11-25,
 * basic/transports, "Session Management"), and prevents unbounded growth in the extension. The
 * extension opens a session for any message without one, even an unreadable one; holds unused
 * streams open; and stores client descriptions and subscriptions.
 */
@Singleton
class SessionCheck {
  /** After {@link MessageCheck}, before the extension. */
  private static final int BEFORE_THE_EXTENSION = -1;

  private static final int BEFORE_MESSAGES_ARE_READ = -4;

  private static final String SESSION = "Mcp-Session-Id";
  private static final String REVISION = "MCP-Protocol-Version";

  /** Allows for a client's name, icons and capabilities, none of which is needed. */
  private static final int MOST_BYTES_OF_FIRST = 8 * 1024;

  private static final int RETRY_AFTER_SECONDS = 60;
  private static final int NO_SUCH_RESOURCE = JsonRpcErrorCodes.RESOURCE_NOT_FOUND;

  private final Sessions sessions;
  private final ResourceManager resources;
  private final String path;

  SessionCheck(
      Sessions sessions,
      ResourceManager resources,
      @ConfigProperty(name = "quarkus.mcp.server.http.root-path") String path) {
    this.sessions = sessions;
    this.resources = resources;
    this.path = path.startsWith("/") ? path : "/" + path;
  }

  void register(@Observes Router router) {
    // Below this path the extension offers the HTTP+SSE transport that the protocol dropped in
    // 2025-03-26.
    router.route(path + "/*").order(BEFORE_MESSAGES_ARE_READ).handler(this::refuseBelow);
    router.route(path).order(BEFORE_THE_EXTENSION).handler(this::check);
  }

  private void refuseBelow(RoutingContext call) {
    if (call.normalizedPath().length() > path.length() + 1) {
      refuse(
          call,
          Problem.of("not-found", "Nothing is here", 404, "There is nothing at this address."));
    } else {
      call.next();
    }
  }

  private void check(RoutingContext call) {
    HttpMethod method = call.request().method();
    String session = call.request().getHeader(SESSION);
    if (method.equals(HttpMethod.POST)) {
      checkMessage(call, session, call.get(MessageCheck.MESSAGE));
    } else if (!method.equals(HttpMethod.DELETE)) {
      call.response().putHeader(HttpHeaders.ALLOW, "POST, DELETE");
      refuse(
          call,
          Problem.of(
              "method",
              "The method does not apply",
              405,
              "This address takes POST and DELETE; the service has no stream to listen to."));
    } else if (session == null) {
      RpcError.noMessage(null, "Name the session to end in the header " + SESSION + ".")
          .answer(call);
    } else if (sessions.has(session)) {
      call.next();
    } else {
      noSuchSession(call);
    }
  }

  private void checkMessage(RoutingContext call, String session, Object message) {
    String revision = call.request().getHeader(REVISION);
    if (revision != null && !McpMessageHandler.SUPPORTED_PROTOCOL_VERSIONS.contains(revision)) {
      RpcError.noMessage(
              null,
              "The header "
                  + REVISION
                  + " names one of "
                  + String.join(", ", McpMessageHandler.SUPPORTED_PROTOCOL_VERSIONS)
                  + ".")
          .answer(call);
    } else if (session == null) {
      checkFirst(call, message);
    } else if (!sessions.has(session)) {
      noSuchSession(call);
    } else if (message instanceof JsonObject one) {
      pass(call, one);
    } else {
      call.next();
    }
  }

  private void checkFirst(RoutingContext call, Object message) {
    if (!(message instanceof JsonObject first)
        || !"initialize".equals(first.getValue("method"))
        || !"2.0".equals(first.getValue("jsonrpc"))
        || !first.containsKey("id")) {
      RpcError.noMessage(
              message instanceof JsonObject one ? one.getValue("id") : null,
              "Open a session by \"initialize\", alone and with an id, or name yours in the header "
                  + SESSION
                  + ".")
          .answer(call);
    } else if (call.body().length() > MOST_BYTES_OF_FIRST) {
      RpcError.badParameters(
              first.getValue("id"),
              "\"clientInfo\" and \"capabilities\" are too large. Send at most "
                  + MOST_BYTES_OF_FIRST / 1024
                  + " KB.")
          .answer(call);
    } else {
      open(call, first);
    }
  }

  private void open(RoutingContext call, JsonObject first) {
    switch (sessions.take(call, ClientAddress.of(call))) {
      case NOT_FOR_THIS_CLIENT ->
          full(call, 429, first, "This place has as many sessions as it may have.");
      case NOT_FOR_ANYBODY -> full(call, 503, first, "There are as many sessions as there may be.");
      case THERE_IS -> {
        call.addHeadersEndHandler(
            sent -> sessions.opened(call, call.response().headers().get(SESSION)));
        call.addEndHandler(over -> sessions.opened(call, null));
        ((RoutingContextInternal) call).setBody(bare(first).toBuffer());
        call.next();
      }
    }
  }

  private static void full(RoutingContext call, int status, JsonObject first, String why) {
    call.response().putHeader(HttpHeaders.RETRY_AFTER, Integer.toString(RETRY_AFTER_SECONDS));
    RpcError.refused(
            status,
            first.getValue("id"),
            why + " End one by DELETE, or wait; one that is not used ends by itself.")
        .answer(call);
  }

  /** The first message without the client's description, which would be stored. */
  private static JsonObject bare(JsonObject first) {
    return new JsonObject()
        .put("jsonrpc", "2.0")
        .put("id", first.getValue("id"))
        .put("method", "initialize")
        .put(
            "params",
            new JsonObject()
                .put("protocolVersion", spoken(first))
                .put("capabilities", new JsonObject())
                .put("clientInfo", new JsonObject().put("name", "-").put("version", "-")));
  }

  /** An unknown revision is answered with the newest known (basic/lifecycle). */
  private static String spoken(JsonObject first) {
    String asked = first.getJsonObject("params").getString("protocolVersion");
    return McpMessageHandler.SUPPORTED_PROTOCOL_VERSIONS.contains(asked)
        ? asked
        : McpMessageHandler.SUPPORTED_PROTOCOL_VERSIONS.get(0);
  }

  private void pass(RoutingContext call, JsonObject message) {
    String method = message.getString("method");
    if (method == null || method.equals("notifications/cancelled")) {
      // The client was sent no request, and no answer takes long enough to be cancelled.
      call.response().setStatusCode(202).end();
    } else if (method.equals("resources/subscribe") || method.equals("resources/unsubscribe")) {
      subscribe(call, message);
    } else {
      call.next();
    }
  }

  /** Resources do not change while the service runs, so subscriptions need not be stored. */
  private void subscribe(RoutingContext call, JsonObject message) {
    Object id = message.getValue("id");
    String uri = message.getJsonObject("params").getString("uri");
    if (resources.getResource(uri) == null) {
      new RpcError(200, id, NO_SUCH_RESOURCE, "There is no such resource.").answer(call);
    } else if (id == null) {
      call.response().setStatusCode(202).end();
    } else {
      call.response()
          .putHeader(HttpHeaders.CONTENT_TYPE, "application/json")
          .end(
              new JsonObject()
                  .put("jsonrpc", "2.0")
                  .put("id", id)
                  .put("result", new JsonObject())
                  .toBuffer());
    }
  }

  private static void noSuchSession(RoutingContext call) {
    RpcError.refused(404, null, "There is no such session. Open one by \"initialize\".")
        .answer(call);
  }

  private static void refuse(RoutingContext call, Problem problem) {
    call.response()
        .setStatusCode(problem.status())
        .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
        .end(Json.encodeToBuffer(problem));
  }
}
