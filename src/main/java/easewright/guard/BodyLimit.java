package easewright.guard;

import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.RouteConstants;
import io.quarkus.vertx.http.runtime.VertxHttpRecorder;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.regex.Pattern;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Gives requests that bring no photo a lower limit than the framework's, which must let photos pass
 * and knows no exceptions.
 */
@Singleton
class BodyLimit {
  private static final Pattern PHOTOS =
      Pattern.compile(
          "/(?:(?:v1|desk)/clinics/[^/]++/cases/[^/]++|(?:v1/wearer-links|desk/wearer)/[^/]++)"
              + "/photos");

  private static final int TOO_LARGE = 413;

  private final long most;

  BodyLimit(@ConfigProperty(name = "easewright.limit.body") MemorySize most) {
    this.most = most.asLongValue();
  }

  /** Whether a path takes photos. */
  static boolean isOfPhotos(String path) {
    return PHOTOS.matcher(path).matches();
  }

  void install(@Observes Router router) {
    router.route().order(RouteConstants.ROUTE_ORDER_UPLOAD_LIMIT + 1).handler(this::bound);
  }

  private void bound(RoutingContext call) {
    if (isOfPhotos(PlainPath.of(call))) {
      call.next();
      return;
    }
    HttpServerRequest request = call.request();
    String length = request.getHeader(HttpHeaders.CONTENT_LENGTH);
    if (length != null && Long.parseLong(length) > most) {
      call.response()
          .putHeader(HttpHeaders.CONNECTION, "close")
          .setStatusCode(TOO_LARGE)
          .end()
          .onComplete(sent -> request.connection().close());
      return;
    }
    if (length == null) {
      call.put(VertxHttpRecorder.MAX_REQUEST_SIZE_KEY, most);
    }
    call.next();
  }
}
