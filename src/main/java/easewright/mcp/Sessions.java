package easewright.mcp;

import io.quarkiverse.mcp.server.runtime.ConnectionManager;
import io.quarkiverse.mcp.server.runtime.McpConnectionBase;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Singleton;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * How many sessions there are, in all and from one place (see {@link
 * easewright.access.ClientAddress}). The extension keeps them, and forgets those that are not used;
 * it counts none and bounds none.
 */
@Singleton
class Sessions {
  /** Whether there is room for one more. */
  enum Room {
    THERE_IS,
    NOT_FOR_THIS_PLACE,
    NOT_FOR_ANYBODY
  }

  private final ConnectionManager kept;
  private final int most;
  private final int mostOfOnePlace;
  private final Map<String, String> placesBySession = new HashMap<>();
  private final Map<RoutingContext, String> placesOfOpening = new HashMap<>();

  Sessions(
      ConnectionManager kept,
      @ConfigProperty(name = "easewright.mcp.sessions") int most,
      @ConfigProperty(name = "easewright.mcp.sessions-of-one-place") int mostOfOnePlace) {
    this.kept = kept;
    this.most = most;
    this.mostOfOnePlace = mostOfOnePlace;
  }

  boolean has(String session) {
    return kept.has(session);
  }

  /** Takes room for a session that a call is about to open; {@link #opened} gives it back. */
  synchronized Room take(RoutingContext call, String place) {
    placesBySession.keySet().removeIf(session -> !kept.has(session));
    int ofThisPlace =
        Collections.frequency(placesBySession.values(), place)
            + Collections.frequency(placesOfOpening.values(), place);
    if (ofThisPlace >= mostOfOnePlace) {
      return Room.NOT_FOR_THIS_PLACE;
    }
    if (all() + placesOfOpening.size() >= most) {
      return Room.NOT_FOR_ANYBODY;
    }
    placesOfOpening.put(call, place);
    return Room.THERE_IS;
  }

  /** Every session the extension keeps, so that none it keeps unasked goes uncounted. */
  private int all() {
    int all = 0;
    for (McpConnectionBase one : kept) {
      all += one == null ? 0 : 1;
    }
    return all;
  }

  /**
   * Ends what {@link #take} began. May be called twice.
   *
   * @param session the session that was opened; null if none was
   */
  synchronized void opened(RoutingContext call, String session) {
    String place = placesOfOpening.remove(call);
    if (place != null && session != null) {
      placesBySession.put(session, place);
    }
  }
}
