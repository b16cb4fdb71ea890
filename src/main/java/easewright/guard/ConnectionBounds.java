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
 * Bounds what connections hold: how many there are, in all and from one address, how long the head
 * of a request may take, and how much waits to be read. Where there are too many, those idle
 * longest are closed first; where too much waits to be read, those that have waited longest. An
 * honest client is neither for long.
 *
 * <p>Netty makes its part of this ({@link ConnectionWatch}) before the application is there, so
 * there is one for the whole process.
 */
final class ConnectionBounds {
  /** The one of the process. */
  static final ConnectionBounds PROCESS = new ConnectionBounds();

  /** Of what waits to be sent, in all, bytes. It lies outside the heap. */
  private static final long MOST_WAITING_BYTES = 32L << 20;

  private final Map<Channel, Connection> connections = new ConcurrentHashMap<>();
  private volatile int most = Integer.MAX_VALUE;
  private volatile int mostOfAddress = Integer.MAX_VALUE;
  private volatile long patienceNs = Long.MAX_VALUE;

  private ConnectionBounds() {}

  /**
   * Sets the bounds.
   *
   * @param patience how long a head may take to arrive, and a client to read on
   */
  void set(int mostConnections, int mostConnectionsOfAddress, Duration patience) {
    most = mostConnections;
    mostOfAddress = mostConnectionsOfAddress;
    patienceNs = patience.toNanos();
  }

  /** Counts a connection just accepted, and makes room for it. */
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

  /** What is known of a connection, if it was seen opening. */
  Optional<Connection> of(Channel channel) {
    return Optional.ofNullable(connections.get(channel));
  }

  private void keepBound(Connection opened, Predicate<Connection> counted, int bound) {
    if (connections.size() > bound
        && connections.values().stream().filter(counted).count() > bound) {
      closeIdleLongest(counted.and(one -> one != opened));
    }
  }

  /** Where none is idle, the one that has said nothing for longest is closed. */
  private void closeIdleLongest(Predicate<Connection> some) {
    connections.values().stream()
        .filter(some)
        .min(
            Comparator.comparing((Connection one) -> !one.isIdle())
                .thenComparing(Connection::lastReadNs))
        .ifPresent(this::close);
  }

  /** Not counted from now on, though it closes only when its own thread comes to it. */
  private void close(Connection one) {
    connections.remove(one.channel());
    one.close();
  }

  /** Closes those that keep us waiting too long or too much. */
  void lookRound() {
    long now = System.nanoTime();
    long waiting = 0;
    for (Connection one : connections.values()) {
      if (one.look(now, patienceNs)) {
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
