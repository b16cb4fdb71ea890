package easewright.guard;

import easewright.api.Place;
import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.impl.RoutingContextInternal;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.function.Predicate;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Reads a request wholly before it takes a place ({@link AtOnce}), so that whoever sends drop by
 * drop takes none. How many arrive at once is bounded, from one place and in all, and so are their
 * bytes; beyond that the oldest are hung up on, which an honest request, there in milliseconds,
 * never is. Only requests of many lines are read as they are answered.
 */
@Singleton
class Arriving {
  /** After cross-origin answers (300), before {@link AtOnce}. */
  private static final int PRIORITY = 295;

  private static final int MOST = 512;
  private static final int MOST_OF_PLACE = 128;

  /** Bytes held of requests that are not whole, in all and from one place. */
  private static final long MOST_BYTES = 24L << 20;

  private static final long MOST_BYTES_OF_PLACE = 12L << 20;
  private static final int TOO_LARGE = 413;

  private final Set<Arrival> arrivals = new LinkedHashSet<>();
  private final long mostBody;
  private final long patienceNs;

  /** A request on its way. */
  private static final class Arrival {
    private final RoutingContext call;
    private final String place;
    private final long sinceNs = System.nanoTime();
    private final Buffer body = Buffer.buffer();

    Arrival(RoutingContext call) {
      this.call = call;
      this.place = Place.of(call);
    }
  }

  Arriving(
      @ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize mostBody,
      @ConfigProperty(name = "easewright.limit.arrival") Duration patience) {
    this.mostBody = mostBody.asLongValue();
    this.patienceNs = patience.toNanos();
  }

  void register(@Observes Filters filters, Vertx vertx) {
    filters.register(new Once("arrival", this::receive), PRIORITY);
    vertx.setPeriodic(1000, tick -> lookRound());
  }

  private void receive(RoutingContext call) {
    HttpServerRequest request = call.request();
    if (request.isEnded() || !isToBeRead(call)) {
      call.next();
      return;
    }
    Arrival arrival = new Arrival(call);
    begin(arrival);
    Ending.of(call, () -> end(arrival));
    if ("100-continue".equalsIgnoreCase(request.getHeader(HttpHeaders.EXPECT))) {
      call.response().writeContinue();
      request.headers().remove(HttpHeaders.EXPECT);
    }
    request.handler(piece -> take(arrival, piece));
    request.endHandler(whole -> goOn(arrival));
    request.resume();
  }

  /** What says that it is too large is refused by whoever bounds it, unread. */
  private boolean isToBeRead(RoutingContext call) {
    HttpServerRequest request = call.request();
    if (AtOnce.isOfLines(call)) {
      return false;
    }
    String length = request.getHeader(HttpHeaders.CONTENT_LENGTH);
    return length == null
        ? request.headers().contains(HttpHeaders.TRANSFER_ENCODING)
        : !length.equals("0") && Long.parseLong(length) <= mostBody;
  }

  private void goOn(Arrival arrival) {
    if (!end(arrival)) {
      return;
    }
    RoutingContextInternal call = (RoutingContextInternal) arrival.call;
    call.visitHandler(RoutingContextInternal.BODY_HANDLER);
    call.setBody(arrival.body);
    arrival.call.next();
  }

  private void take(Arrival arrival, Buffer piece) {
    boolean tooLarge;
    synchronized (arrivals) {
      if (!arrivals.contains(arrival)) {
        return;
      }
      arrival.body.appendBuffer(piece);
      tooLarge = arrival.body.length() > mostBody;
      keepBounds(arrival.place);
    }
    if (tooLarge && end(arrival)) {
      arrival.call.fail(TOO_LARGE);
    }
  }

  private void begin(Arrival arrival) {
    synchronized (arrivals) {
      arrivals.add(arrival);
      keepBounds(arrival.place);
    }
  }

  /** Once, however often it is said to be over; true for the first time. */
  private boolean end(Arrival arrival) {
    synchronized (arrivals) {
      return arrivals.remove(arrival);
    }
  }

  private void keepBounds(String place) {
    keepBound(one -> one.place.equals(place), MOST_OF_PLACE, MOST_BYTES_OF_PLACE);
    keepBound(one -> true, MOST, MOST_BYTES);
  }

  private void keepBound(Predicate<Arrival> counted, int most, long mostBytes) {
    int many = 0;
    long bytes = 0;
    for (Arrival one : arrivals) {
      if (counted.test(one)) {
        many++;
        bytes += one.body.length();
      }
    }
    Iterator<Arrival> oldest = arrivals.iterator();
    while ((many > most || bytes > mostBytes) && oldest.hasNext()) {
      Arrival one = oldest.next();
      if (counted.test(one)) {
        many--;
        bytes -= one.body.length();
        oldest.remove();
        one.call.request().connection().close();
      }
    }
  }

  private void lookRound() {
    long now = System.nanoTime();
    synchronized (arrivals) {
      arrivals.removeIf(
          one -> {
            boolean late = now - one.sinceNs > patienceNs;
            if (late) {
              one.call.request().connection().close();
            }
            return late || one.call.response().closed();
          });
    }
  }
}
