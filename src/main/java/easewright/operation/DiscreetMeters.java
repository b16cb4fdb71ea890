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
 * Removes request URLs from metrics, as {@link DiscreetSpans} does for traces: requests are counted
 * by route template, such as {@code /desk/wearer/{link}}, and those rejected before reaching a
 * route as "other". The framework would use the URL itself, which may be a secret, and create a
 * meter for each until real routes are no longer counted.
 */
@Singleton
class DiscreetMeters implements MeterFilter, HttpServerMetricsTagsContributor {
  private static final String OTHER = "other";
  private static final String URI = "uri";
  private static final String METHOD = "method";

  private static final Set<String> METHODS =
      Set.of("GET", "HEAD", "POST", "PUT", "DELETE", "CONNECT", "OPTIONS", "TRACE", "PATCH");

  /** Route templates requested so far; "root" is the framework's. */
  private final Set<String> routes = ConcurrentHashMap.newKeySet();

  DiscreetMeters() {
    routes.add("root");
  }

  /**
   * The route found by the resource router, or else by the router before it; none if neither
   * matched.
   */
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

  /** Called twice: by the composite registry and by the one inside it. */
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
