package easewright.mcp;

import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** The service's address as the assistant called it, used as the base of links in a reply. */
@Singleton
class CalledAs {
  private final CurrentVertxRequest current;
  private final String root;

  CalledAs(
      CurrentVertxRequest current,
      @ConfigProperty(name = "quarkus.http.root-path", defaultValue = "/") String root) {
    this.current = current;
    this.root = root;
  }

  /** Scheme, host and the root path; "" if no host was named. */
  String beforeThePath() {
    HttpServerRequest request = current.getCurrent().request();
    return request.authority() == null ? "" : request.scheme() + "://" + request.authority() + root;
  }
}
