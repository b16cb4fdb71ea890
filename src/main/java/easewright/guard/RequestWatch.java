package easewright.guard;

import io.netty.channel.ChannelDuplexHandler;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelPromise;
import io.netty.handler.codec.http.HttpContent;
import io.netty.handler.codec.http.HttpHeaders;
import io.netty.handler.codec.http.HttpRequest;
import io.netty.handler.codec.http.HttpResponse;
import io.netty.handler.codec.http.HttpStatusClass;
import io.netty.handler.codec.http.LastHttpContent;
import io.netty.util.ReferenceCountUtil;
import java.util.List;

/**
 * Sees the requests of a connection before the server does. Closes a connection that keeps sending
 * requests without waiting for responses or reading them, since the server would create an object
 * for each request at once. Drops empty proxy headers, since the server fails on them.
 */
final class RequestWatch extends ChannelDuplexHandler {
  /** Browsers and proxies wait for each response; a well-behaved program may pipeline a few. */
  private static final int MOST_AT_ONCE = 16;

  private static final int SWITCHING_PROTOCOLS = 101;

  private static final List<String> ADDED_BY_PROXIES =
      List.of(
          "Forwarded",
          "X-Forwarded-For",
          "X-Forwarded-Host",
          "X-Forwarded-Port",
          "X-Forwarded-Prefix",
          "X-Forwarded-Proto",
          "X-Forwarded-Ssl");

  private final Connection connection;
  private boolean hungUp;

  RequestWatch(Connection connection) {
    this.connection = connection;
  }

  @Override
  public void channelRead(ChannelHandlerContext context, Object message) {
    if (!hungUp && message instanceof HttpRequest request) {
      dropBlank(request.headers());
      hungUp = connection.begun() > MOST_AT_ONCE || !context.channel().isWritable();
      if (hungUp) {
        context.close();
      }
    }
    if (message instanceof HttpContent body) {
      connection.bodyRead(body.content().readableBytes(), body instanceof LastHttpContent);
    }
    if (hungUp) {
      ReferenceCountUtil.release(message);
    } else {
      context.fireChannelRead(message);
    }
  }

  private static void dropBlank(HttpHeaders headers) {
    for (String name : ADDED_BY_PROXIES) {
      String value = headers.get(name);
      if (value != null && value.split(",", 2)[0].isBlank()) {
        headers.remove(name);
      }
    }
  }

  @Override
  public void write(ChannelHandlerContext context, Object message, ChannelPromise promise) {
    if (message instanceof LastHttpContent && !isInterim(message)) {
      connection.answered();
    }
    context.write(message, promise);
  }

  /** "100 Continue" is not a final response (RFC 9110, section 15.2). */
  private static boolean isInterim(Object message) {
    return message instanceof HttpResponse response
        && response.status().codeClass() == HttpStatusClass.INFORMATIONAL
        && response.status().code() != SWITCHING_PROTOCOLS;
  }
}
