package easewright.guard;

import io.netty.channel.Channel;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;

/**
 * Limits the number of connections in total and per address, the time for a request head to arrive,
 * and the amount of response data waiting to be read. Above the connection limits, closes those
 * idle longest first; above the data limit, those that have waited longest. An honest client is
 * neither for long.
 *
 * <p>Netty creates its part ({@link ConnectionWatch}) before the application exists, so there is
 * one instance per process.
 */
final class ConnectionBounds {
  /** The instance of this process. */
  static final ConnectionBounds PROCESS = new ConnectionBounds();

  /** Total bytes that may wait to be sent. They lie outside the heap. */
  private static final long MOST_WAITING_BYTES = 32L << 20;

  private final Map<Channel, Connection> connections = new ConcurrentHashMap<>();
  private volatile int most = Integer.MAX_VALUE;
  private volatile int mostOfAddress = Integer.MAX_VALUE;
  private volatile long patienceNs = Long.MAX_VALUE;

  private ConnectionBounds() {}

  /**
   * Sets the limits.
   *
   * @param patience how long a head may take to arrive, and a client may pause reading
   */
  void set(int mostConnections, int mostConnectionsOfAddress, Duration patience) {
    most = mostConnections;
    mostOfAddress = mostConnectionsOfAddress;
    patienceNs = patience.toNanos();
  }

  /** Registers a newly accepted connection, closing others if needed. */
  Connection open(Channel channel) {
    Connection opened = new Connection(channel);
    connections.put(channel, opened);
    channel.closeFuture().addListener(closed -> connections.remove(channel));
    keepBound(opened, one -> one.isOfServerOf(opened), most);
    keepBound(
        opened,
        one -> one.isOfServerOf(opened) && one.address().equals(opened.address()),
        mostOfAddress);
    return opened;
  }

  /** The state of a connection, if its opening was seen. */
  Optional<Connection> of(Channel channel) {
    return Optional.ofNullable(connections.get(channel));
  }

  private void keepBound(Connection opened, Predicate<Connection> counted, int bound) {
    if (connections.size() > bound
        && connections.values().stream().filter(counted).count() > bound) {
      closeIdleLongest(counted.and(one -> one != opened));
    }
  }

  /** If none is idle, closes the one that has sent nothing for longest. */
  private void closeIdleLongest(Predicate<Connection> some) {
    connections.values().stream()
        .filter(some)
        .min(
            Comparator.comparing((Connection one) -> !one.isIdle())
                .thenComparing(Connection::lastReadNs))
        .ifPresent(this::close);
  }

  /** No longer counted, although its own thread may close it only later. */
  private void close(Connection one) {
    connections.remove(one.channel());
    one.close();
  }

  /** Closes connections that exceed the time or data limits. */
  void closeOffenders() {
    long now = System.nanoTime();
    long waiting = 0;
    for (Connection one : connections.values()) {
      if (one.sample(now, patienceNs)) {
        close(one);
      } else {
        waiting += one.waitingBytes();
      }
    }
    if (waiting > MOST_WAITING_BYTES) {
      closeWaitingLongest(waiting - MOST_WAITING_BYTES);
    }
  }

  private void closeWaitingLongest(long bytes) {
    List<Connection> longest =
        connections.values().stream()
            .filter(one -> one.waitingBytes() > 0)
            .sorted(Comparator.comparing(Connection::waitingSinceNs))
            .toList();
    long left = bytes;
    for (Connection one : longest) {
      if (left <= 0) {
        return;
      }
      left -= one.waitingBytes();
      close(one);
    }
  }
}
