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
 * Refuses requests whose end a proxy might see elsewhere than we do, and closes their connection
 * ({@link MalformedRequests}): what follows on it may be a request of somebody else's making (RFC
 * 9112, sections 6.1, 6.3 and 11.2), and is refused as well if it has arrived already. Only the
 * transfer coding "chunked" alone is known here.
 */
@Singleton
class Framing {
  /** After the headers of answers, before anything is made of the request. */
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
