package easewright.guard;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.core.http.HttpConnection;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpVersion;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.WeakHashMap;

/**
 * Prevents request smuggling: rejects requests whose end a proxy might place differently, and
 * closes their connection ({@link MalformedRequests}). What follows on it may be a forged request
 * (RFC 9112, sections 6.1, 6.3 and 11.2), and is rejected as well if it has already arrived. The
 * only transfer coding accepted is "chunked" alone.
 */
@Singleton
class Framing {
  /** After the response headers are set, before the request is interpreted. */
  private static final int PRIORITY = 305;

  private static final int BAD_REQUEST = 400;

  private final Set<HttpConnection> doubtful =
      Collections.synchronizedSet(Collections.newSetFromMap(new WeakHashMap<>()));

  void register(@Observes Filters filters) {
    filters.register(this::check, PRIORITY);
  }

  private void check(RoutingContext call) {
    MultiMap headers = call.request().headers();
    List<String> codings = headers.getAll(HttpHeaders.TRANSFER_ENCODING);
    boolean chunked = codings.size() == 1 && codings.get(0).strip().equalsIgnoreCase("chunked");
    boolean clear =
        codings.isEmpty()
            || chunked
                && !headers.contains(HttpHeaders.CONTENT_LENGTH)
                && call.request().version() != HttpVersion.HTTP_1_0;
    HttpConnection connection = call.request().connection();
    if (clear && (doubtful.isEmpty() || !doubtful.contains(connection))) {
      call.next();
    } else {
      doubtful.add(connection);
      call.fail(BAD_REQUEST);
    }
  }
}
