package easewright.operation;

import io.opentelemetry.api.common.AttributeKey;
import io.opentelemetry.context.Context;
import io.opentelemetry.sdk.trace.ReadWriteSpan;
import io.opentelemetry.sdk.trace.ReadableSpan;
import io.opentelemetry.sdk.trace.SpanProcessor;
import io.opentelemetry.semconv.ClientAttributes;
import io.opentelemetry.semconv.HttpAttributes;
import io.opentelemetry.semconv.NetworkAttributes;
import io.opentelemetry.semconv.UrlAttributes;
import io.opentelemetry.semconv.UserAgentAttributes;
import jakarta.inject.Singleton;
import java.util.List;

/**
 * Removes client addresses and request URLs from traces: a wearer's link is a secret, a search is a
 * person's text, and an unknown method can be anything. Keeps the route, such as {@code
 * /desk/wearer/{link}}.
 */
@Singleton
class DiscreetSpans implements SpanProcessor {
  private static final List<AttributeKey<String>> HIDDEN =
      List.of(
          UrlAttributes.URL_PATH,
          UrlAttributes.URL_QUERY,
          UrlAttributes.URL_FULL,
          ClientAttributes.CLIENT_ADDRESS,
          NetworkAttributes.NETWORK_PEER_ADDRESS,
          UserAgentAttributes.USER_AGENT_ORIGINAL,
          HttpAttributes.HTTP_REQUEST_METHOD_ORIGINAL);

  @Override
  public void onStart(Context parent, ReadWriteSpan span) {
    for (AttributeKey<String> key : HIDDEN) {
      if (span.getAttribute(key) != null) {
        span.setAttribute(key, "-");
      }
    }
  }

  @Override
  public boolean isStartRequired() {
    return true;
  }

  @Override
  public void onEnd(ReadableSpan span) {
    // everything was removed at the start of the span
  }

  @Override
  public boolean isEndRequired() {
    return false;
  }
}
