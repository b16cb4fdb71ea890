package easewright.mcp;

import easewright.access.LongWork;
import easewright.saying.Problem;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpClosedException;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.DecodeException;
import io.vertx.core.json.Json;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Rejects messages that are too large, nested too deep, not JSON or not of the protocol, before the
 * extension reads them. Aborts messages that the extension still leaves unanswered, so that no
 * client waits for ever and the slot is freed.
 */
@Singleton
class MessageCheck {
  /** Key under which later handlers find the message. */
  static final String MESSAGE = "easewright.mcp.message";

  /** After every filter and the body-size limit, before {@link SessionCheck}. */
  private static final int AFTER_FILTERS = -2;

  private final String path;
  private final long mostTimeMs;
  private final LongWork longWork;

  MessageCheck(
      LongWork longWork,
      @ConfigProperty(name = "quarkus.mcp.server.http.root-path") String path,
      @ConfigProperty(name = "easewright.limit.time") Duration mostTime) {
    this.longWork = longWork;
    this.path = path.startsWith("/") ? path : "/" + path;
    this.mostTimeMs = 2 * mostTime.toMillis();
  }

  void register(@Observes Router router) {
    router.post(path + "/*").order(AFTER_FILTERS - 1).handler(MessageCheck::refuseLarge);
    router
        .post(path + "/*")
        .order(AFTER_FILTERS)
        .handler(BodyHandler.create(false).setBodyLimit(MessageBounds.MOST_BYTES))
        .handler(this::check)
        .failureHandler(MessageCheck::forget);
  }

  /** A client that disconnects during its message is not a server error and needs no log line. */
  private static void forget(RoutingContext call) {
    if (!(call.failure() instanceof HttpClosedException)) {
      call.next();
    }
  }

  /** By declared length; a message without one is limited while it arrives. */
  private static void refuseLarge(RoutingContext call) {
    String length = call.request().getHeader(HttpHeaders.CONTENT_LENGTH);
    if (length == null || Long.parseLong(length) <= MessageBounds.MOST_BYTES) {
      call.next();
      return;
    }
    call.response().putHeader(HttpHeaders.CONNECTION, "close");
    RpcError.refused(
            413,
            null,
            "The message is too large. Send at most " + MessageBounds.MOST_BYTES / 1024 + " KB.")
        .answer(call);
  }

  private void check(RoutingContext call) {
    Buffer body = call.body().buffer() == null ? Buffer.buffer() : call.body().buffer();
    Optional<RpcError> fault = MessageBounds.fault(body);
    if (fault.isEmpty()) {
      try {
        Object message = Json.decodeValue(body);
        call.put(MESSAGE, message);
        fault = MessageForm.fault(message);
        if (fault.isEmpty() && MessageForm.isLong(message) && !longWork.takesSlot(call)) {
          call.response().putHeader(HttpHeaders.RETRY_AFTER, "1");
          fault = Optional.of(busy((JsonObject) message));
        }
      } catch (DecodeException unread) {
        fault = Optional.of(RpcError.unreadable("The message can't be read."));
      }
    }
    if (fault.isPresent()) {
      fault.get().answer(call);
    } else {
      giveUpInTime(call);
      call.next();
    }
  }

  private static RpcError busy(JsonObject message) {
    return RpcError.refused(
        503,
        message.getValue("id"),
        "The service is making as many cut plans as it can. Ask again in a second.");
  }

  private void giveUpInTime(RoutingContext call) {
    long timer =
        call.vertx()
            .setTimer(
                mostTimeMs,
                late -> {
                  if (!call.response().headWritten() && !call.response().closed()) {
                    Problem problem = Problem.tookTooLong();
                    call.response()
                        .setStatusCode(problem.status())
                        .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                        .putHeader(HttpHeaders.RETRY_AFTER, "1")
                        .end(Json.encodeToBuffer(problem));
                  }
                });
    call.addEndHandler(ended -> call.vertx().cancelTimer(timer));
  }
}
