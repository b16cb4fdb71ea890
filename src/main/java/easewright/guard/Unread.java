package easewright.guard;

import io.netty.channel.Channel;
import io.netty.channel.ChannelOutboundBuffer;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.net.impl.ConnectionBase;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Bounds the memory of answers that nobody reads: they wait outside the heap, and a client that
 * asks on without reading would fill it. The next request of a connection is dealt with once the
 * answer before it has left; a connection whose answer does not move is closed after a while; and
 * when too much waits in all, those that have waited longest are closed first, so that whoever
 * reads is not affected.
 */
@Singleton
class Unread {
  /** After the headers of answers, before anything is made of the request. */
  private static final int PRIORITY = 308;

  private static final int LOOK_MS = 100;

  /** Of what waits to be sent, in all, bytes. The Java machine has 192 MB for it by README. */
  private static final long MOST_BYTES = 32L << 20;

  /** What waits on a connection: how much, since when anything does, and since when this much. */
  private record Waiting(long bytes, long sinceNs, long stillNs) {}

  private final Map<Channel, Waiting> channels = new ConcurrentHashMap<>();
  private final long patienceNs;

  Unread(@ConfigProperty(name = "easewright.limit.arrival") Duration patience) {
    this.patienceNs = patience.toNanos();
  }

  void register(@Observes Filters filters, Vertx vertx) {
    filters.register(new Once("unread answers", this::check), PRIORITY);
    vertx.setPeriodic(LOOK_MS, tick -> lookRound());
  }

  private void check(RoutingContext call) {
    Channel channel = ((ConnectionBase) call.request().connection()).channel();
    long now = System.nanoTime();
    if (channels.putIfAbsent(channel, new Waiting(0, now, now)) == null) {
      channel.closeFuture().addListener(closed -> channels.remove(channel));
    }
    if (channel.isWritable()) {
      call.next();
    } else {
      goOnOnceRead(call);
    }
  }

  private static void goOnOnceRead(RoutingContext call) {
    HttpServerResponse response = call.response();
    call.request().pause();
    response.drainHandler(
        drained -> {
          response.drainHandler(null);
          call.next();
          call.request().resume();
        });
  }

  private void lookRound() {
    long now = System.nanoTime();
    channels.replaceAll((channel, before) -> look(channel, before, now));
    channels.forEach(
        (channel, waiting) -> {
          if (waiting.bytes() > 0 && now - waiting.stillNs() > patienceNs) {
            channel.close();
          }
        });
    long tooMuch = channels.values().stream().mapToLong(Waiting::bytes).sum() - MOST_BYTES;
    if (tooMuch > 0) {
      closeOldest(tooMuch);
    }
  }

  private static Waiting look(Channel channel, Waiting before, long now) {
    ChannelOutboundBuffer buffer = channel.unsafe().outboundBuffer();
    long bytes = buffer == null ? 0 : buffer.totalPendingWriteBytes();
    return new Waiting(
        bytes,
        before.bytes() == 0 ? now : before.sinceNs(),
        bytes == before.bytes() && bytes > 0 ? before.stillNs() : now);
  }

  private void closeOldest(long bytes) {
    List<Map.Entry<Channel, Waiting>> oldest =
        channels.entrySet().stream()
            .filter(one -> one.getValue().bytes() > 0)
            .sorted(Comparator.comparingLong(one -> one.getValue().sinceNs()))
            .toList();
    long left = bytes;
    for (Map.Entry<Channel, Waiting> one : oldest) {
      if (left <= 0) {
        return;
      }
      one.getKey().close();
      left -= one.getValue().bytes();
    }
  }
}
