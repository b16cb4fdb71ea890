package easewright.operation;

import io.micrometer.core.instrument.Meter;
import io.micrometer.core.instrument.Tag;
import io.micrometer.core.instrument.Tags;
import io.micrometer.core.instrument.config.MeterFilter;
import io.quarkus.micrometer.runtime.HttpServerMetricsTagsContributor;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Keeps out of metrics what the address held, as {@link DiscreetSpans} does for traces: requests
 * are counted by the template of their route, such as {@code /desk/wearer/{link}}, and whatever was
 * refused before it reached one as "other". The framework would tell the address itself then, which
 * may be a secret, and make a new meter of each until true routes are no longer counted.
 */
@Singleton
class DiscreetMeters implements MeterFilter, HttpServerMetricsTagsContributor {
  private static final String OTHER = "other";
  private static final String URI = "uri";
  private static final String METHOD = "method";

  private static final Set<String> METHODS =
      Set.of("GET", "HEAD", "POST", "PUT", "DELETE", "CONNECT", "OPTIONS", "TRACE", "PATCH");

  /** Every route that was asked for so far, as the routers name it; "root" is the framework's. */
  private final Set<String> routes = ConcurrentHashMap.newKeySet();

  DiscreetMeters() {
    routes.add("root");
  }

  /** What the router of resources, or else the router before it, found; none if neither did. */
  @Override
  public Tags contribute(Context context) {
    String template = context.requestContextLocalData("UrlPathTemplate");
    String route = template == null ? context.requestContextLocalData("VertxRoute") : template;
    if (route == null || route.equals("/")) {
      return Tags.empty();
    }
    routes.add(route);
    return Tags.of(URI, route);
  }

  /** Is asked twice, by the registry of all registries and by the one in it. */
  @Override
  public Meter.Id map(Meter.Id id) {
    if (!id.getName().startsWith("http.server.")) {
      return id;
    }
    List<Tag> discreet = id.getTags().stream().map(this::discreet).toList();
    return id.replaceTags(discreet);
  }

  private Tag discreet(Tag tag) {
    Set<String> known =
        switch (tag.getKey()) {
          case URI -> routes;
          case METHOD -> METHODS;
          default -> Set.of(tag.getValue());
        };
    return known.contains(tag.getValue()) ? tag : Tag.of(tag.getKey(), OTHER);
  }
}
