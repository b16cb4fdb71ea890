package easewright.mcp;

import easewright.saying.Problem;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.json.Json;
import io.vertx.core.net.HostAndPort;
import io.vertx.core.net.SocketAddress;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Restricts callers: keeps web pages from reaching the protocol's address by DNS rebinding, as the
 * specification requires (MCP 2025-11-25, basic/transports, "Security Warning"). The extension's
 * own check covers neither a service that listens on every address, as the packaged one does, nor
 * "localhost.example.com".
 *
 * <p>A page may call if its host is this machine or one of {@code easewright.mcp.hosts}. A call
 * through this machine's loopback address must also name such a host.
 */
@Singleton
class CallerCheck {
  /** After the CORS filter (300), before anything is read. */
  private static final int PRIORITY = 250;

  private final boolean enabled;
  private final String path;
  private final Set<String> hosts = new HashSet<>(Set.of("localhost", "127.0.0.1", "::1"));

  CallerCheck(
      @ConfigProperty(name = "easewright.mcp.enabled", defaultValue = "true") boolean enabled,
      @ConfigProperty(name = "easewright.mcp.hosts") Optional<List<String>> hosts,
      @ConfigProperty(name = "quarkus.http.root-path", defaultValue = "/") String root,
      @ConfigProperty(name = "quarkus.mcp.server.http.root-path") String path) {
    this.enabled = enabled;
    this.path = (root + "/" + path).replaceAll("/+", "/");
    hosts.ifPresent(names -> names.forEach(name -> this.hosts.add(bare(name))));
  }

  void register(@Observes Filters filters) {
    filters.register(this::check, PRIORITY);
  }

  private void check(RoutingContext call) {
    String asked = call.normalizedPath();
    if (!asked.equals(path) && !asked.startsWith(path + "/")) {
      call.next();
    } else if (!enabled) {
      refuse(call, Problem.of("not-found", "Nothing is here", 404, "This address is turned off."));
    } else if (mayCall(call.request())) {
      call.next();
    } else {
      refuse(
          call,
          Problem.of(
              "refused",
              "The request is refused",
              403,
              "A page of that origin, or under that host name, may not call this address."));
    }
  }

  private boolean mayCall(HttpServerRequest request) {
    HostAndPort host = request.authority();
    return request.headers().getAll(HttpHeaders.ORIGIN).stream().allMatch(this::known)
        && (host == null || !byLoopback(request) || hosts.contains(bare(host.host())));
  }

  private boolean known(String origin) {
    try {
      String host = URI.create(origin).getHost();
      return host != null && hosts.contains(bare(host));
    } catch (IllegalArgumentException unreadable) {
      return false;
    }
  }

  private static boolean byLoopback(HttpServerRequest request) {
    SocketAddress here = request.connection().localAddress();
    try {
      return here.hostAddress() != null
          && InetAddress.getByName(here.hostAddress()).isLoopbackAddress();
    } catch (UnknownHostException notAnAddress) {
      return false;
    }
  }

  private static String bare(String host) {
    return host.strip().replaceAll("^\\[|]$", "").toLowerCase(Locale.ROOT);
  }

  private static void refuse(RoutingContext call, Problem problem) {
    call.response()
        .setStatusCode(problem.status())
        .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
        .end(Json.encode(problem));
  }
}
