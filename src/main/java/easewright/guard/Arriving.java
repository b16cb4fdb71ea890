package easewright.guard;

import easewright.access.Place;
import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Reads a request wholly before it takes a place ({@link AtOnce}), so that whoever sends drop by
 * drop takes none. How many arrive at once is bounded, from one address and in all, and so are
 * their bytes; beyond that the oldest are hung up on, which an honest request, there in
 * milliseconds, never is. Only requests of many lines are read as they are answered.
 */
@Singleton
class Arriving {
  /** After cross-origin answers (300), before {@link AtOnce}. */
  private static final int PRIORITY = 295;

  private static final int MOST = 512;
  private static final int MOST_OF_ADDRESS = 128;

  /** Bytes held of requests that are not whole, in all and from one address. */
  private static final long MOST_BYTES = 24L << 20;

  private static final long MOST_BYTES_OF_ADDRESS = 12L << 20;

  /** Calls on their way, the oldest first. */
  private final Map<RoutingContext, Arrival> arrivals = new LinkedHashMap<>();

  private final BodyHandler reader;
  private final long mostBody;
  private final long patienceNs;

  /** Where a request comes from, and since when. */
  private record Arrival(String address, long sinceNs) {}

  Arriving(
      @ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize mostBody,
      @ConfigProperty(name = "easewright.limit.arrival") Duration patience) {
    this.mostBody = mostBody.asLongValue();
    this.reader = BodyHandler.create(false).setBodyLimit(this.mostBody);
    this.patienceNs = patience.toNanos();
  }

  void register(@Observes Filters filters, Vertx vertx) {
    filters.register(new Once("arrival", this::receive), PRIORITY);
    // The reader goes on to the next filter when all has come.
    filters.register(new Once("arrived", this::arrived), PRIORITY - 1);
    vertx.setPeriodic(1000, tick -> lookRound());
  }

  private void receive(RoutingContext call) {
    if (!isToBeRead(call)) {
      call.next();
      return;
    }
    synchronized (arrivals) {
      arrivals.put(call, new Arrival(Place.of(call), System.nanoTime()));
      keepBounds(Place.of(call));
    }
    Ending.of(call, () -> end(call));
    HttpServerRequest request = call.request();
    if ("100-continue".equalsIgnoreCase(request.getHeader(HttpHeaders.EXPECT))) {
      call.response().writeContinue();
      request.headers().remove(HttpHeaders.EXPECT);
    }
    reader.handle(call);
  }

  private void arrived(RoutingContext call) {
    end(call);
    call.next();
  }

  private void end(RoutingContext call) {
    synchronized (arrivals) {
      arrivals.remove(call);
    }
  }

  /** What says that it is too large is refused by whoever bounds it, unread. */
  private boolean isToBeRead(RoutingContext call) {
    HttpServerRequest request = call.request();
    if (request.isEnded() || AtOnce.isOfLines(call)) {
      return false;
    }
    String length = request.getHeader(HttpHeaders.CONTENT_LENGTH);
    return length == null
        ? request.headers().contains(HttpHeaders.TRANSFER_ENCODING)
        : !length.equals("0") && Long.parseLong(length) <= mostBody;
  }

  private void keepBounds(String address) {
    keepBound(one -> one.address().equals(address), MOST_OF_ADDRESS, MOST_BYTES_OF_ADDRESS);
    keepBound(one -> true, MOST, MOST_BYTES);
  }

  private void keepBound(Predicate<Arrival> counted, int most, long mostBytes) {
    int many = 0;
    long bytes = 0;
    for (Map.Entry<RoutingContext, Arrival> one : arrivals.entrySet()) {
      if (counted.test(one.getValue())) {
        many++;
        bytes += one.getKey().request().bytesRead();
      }
    }
    Iterator<Map.Entry<RoutingContext, Arrival>> oldest = arrivals.entrySet().iterator();
    while ((many > most || bytes > mostBytes) && oldest.hasNext()) {
      Map.Entry<RoutingContext, Arrival> one = oldest.next();
      if (counted.test(one.getValue())) {
        many--;
        bytes -= one.getKey().request().bytesRead();
        oldest.remove();
        one.getKey().request().connection().close();
      }
    }
  }

  private void lookRound() {
    long now = System.nanoTime();
    synchronized (arrivals) {
      arrivals
          .entrySet()
          .removeIf(
              one -> {
                boolean late = now - one.getValue().sinceNs() > patienceNs;
                if (late) {
                  one.getKey().request().connection().close();
                }
                return late || one.getKey().response().closed();
              });
      keepBound(one -> true, MOST, MOST_BYTES);
    }
  }
}
