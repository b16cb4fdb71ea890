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
 * Limits the number of sessions in total and per client (see {@link
 * easewright.access.ClientAddress}). The extension stores sessions and drops unused ones; it
 * neither counts nor limits them.
 */
@Singleton
class Sessions {
  /** Whether another session may be opened. */
  enum Room {
    THERE_IS,
    NOT_FOR_THIS_CLIENT,
    NOT_FOR_ANYBODY
  }

  private final ConnectionManager kept;
  private final int most;
  private final int mostOfOneClient;
  private final Map<String, String> clientsBySession = new HashMap<>();
  private final Map<RoutingContext, String> clientsOfOpening = new HashMap<>();

  Sessions(
      ConnectionManager kept,
      @ConfigProperty(name = "easewright.mcp.sessions") int most,
      @ConfigProperty(name = "easewright.mcp.sessions-of-one-place") int mostOfOneClient) {
    this.kept = kept;
    this.most = most;
    this.mostOfOneClient = mostOfOneClient;
  }

  boolean has(String session) {
    return kept.has(session);
  }

  /**
   * Reserves room for a session that a call is about to open; {@link #opened} releases the
   * reservation.
   */
  synchronized Room take(RoutingContext call, String client) {
    clientsBySession.keySet().removeIf(session -> !kept.has(session));
    int ofThisClient =
        Collections.frequency(clientsBySession.values(), client)
            + Collections.frequency(clientsOfOpening.values(), client);
    if (ofThisClient >= mostOfOneClient) {
      return Room.NOT_FOR_THIS_CLIENT;
    }
    if (all() + clientsOfOpening.size() >= most) {
      return Room.NOT_FOR_ANYBODY;
    }
    clientsOfOpening.put(call, client);
    return Room.THERE_IS;
  }

  /** Number of sessions the extension holds, including any it opened unasked. */
  private int all() {
    int all = 0;
    for (McpConnectionBase one : kept) {
      all += one == null ? 0 : 1;
    }
    return all;
  }

  /**
   * Ends the reservation of {@link #take}. May be called twice.
   *
   * @param session the session that was opened; null if none was
   */
  synchronized void opened(RoutingContext call, String session) {
    String client = clientsOfOpening.remove(call);
    if (client != null && session != null) {
      clientsBySession.put(session, client);
    }
  }
}
