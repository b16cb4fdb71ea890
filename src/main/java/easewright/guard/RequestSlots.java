package easewright.guard;

import easewright.access.LongWork;
import easewright.saying.Problem;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.net.impl.ConnectionBase;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.health.Readiness;

/**
 * Limits concurrent requests. Rejects any beyond the limit before reading them, so that accepted
 * ones are answered soon, memory stays bounded and health checks still get through. Long requests
 * (bulk requests, layout searches and photos) also have a lower limit of their own; otherwise they
 * would soon hold every slot.
 */
@Singleton
class RequestSlots implements LongWork {
  /** After the CORS filter (300), before anything else. */
  private static final int PRIORITY = 290;

  private static final int A_CORE = 16;
  private static final int RETRY_AFTER_SECONDS = 1;
  private static final String LINES = "application/x-ndjson";
  private static final Set<String> LONG =
      Set.of("/v1/cut-plans", "/desk/cut", "/v1/clinics/samples", "/desk/clinics/new/sample");

  /** A slot held by a call: since when, over which connection, and for what kind of call. */
  private record Taken(
      long since, Optional<Connection> connection, boolean ofLines, boolean isLong) {

    /** Whether the slot is waiting for its client, judging by the connection. */
    boolean isLate(long now, long patienceNanos) {
      return connection.filter(one -> one.isLate(now, patienceNanos, ofLines)).isPresent();
    }

    Taken ofLongWork() {
      return new Taken(since, connection, ofLines, true);
    }
  }

  private final AtomicInteger free;
  private final AtomicInteger freeForLong;
  private final long patienceNanos;
  private final long patienceInNeedNanos;
  private final Shutdown stopping;
  private final Map<RoutingContext, Taken> taken = new ConcurrentHashMap<>();
  private final Refusal busy =
      new Refusal(
          Problem.of(
              "busy",
              "The service is busy",
              503,
              "It has as much work as it can do now. Nothing of the request was read."));

  RequestSlots(
      @ConfigProperty(name = "easewright.limit.at-once") OptionalInt most,
      @ConfigProperty(name = "easewright.limit.at-once-of-long") OptionalInt mostOfLong,
      @ConfigProperty(name = "easewright.limit.arrival") Duration patience,
      @ConfigProperty(name = "easewright.limit.arrival-in-need") Duration patienceInNeed,
      @Readiness Shutdown stopping) {
    int cores = Runtime.getRuntime().availableProcessors();
    this.free = new AtomicInteger(most.orElse(A_CORE * cores));
    this.freeForLong = new AtomicInteger(mostOfLong.orElse(2 * cores));
    this.patienceNanos = patience.toNanos();
    this.patienceInNeedNanos = patienceInNeed.toNanos();
    this.stopping = stopping;
  }

  void register(@Observes Filters filters, Vertx vertx) {
    filters.register(new OncePerCall("places", this::admit), PRIORITY);
    vertx.setPeriodic(1000, tick -> closeStalled());
  }

  private void admit(RoutingContext call) {
    boolean lines = isOfLines(call);
    boolean isLong = lines || isPost(call) && isLong(PlainPath.of(call));
    Optional<Connection> connection = connection(call); // nothing may fail once a slot is taken
    if (stopping.begun()) {
      call.response().putHeader(HttpHeaders.CONNECTION, "close");
      busy.answer(call, RETRY_AFTER_SECONDS);
    } else if (take(isLong) || makeRoom(isLong) && take(isLong)) {
      taken.put(call, new Taken(System.nanoTime(), connection, lines, isLong));
      Ending.of(call, () -> release(call));
      call.next();
    } else {
      busy.answer(call, RETRY_AFTER_SECONDS);
    }
  }

  private static boolean isLong(String path) {
    return LONG.contains(path) || BodyLimit.isOfPhotos(path);
  }

  private static Optional<Connection> connection(RoutingContext call) {
    return call.request().connection() instanceof ConnectionBase connection
        ? ConnectionBounds.PROCESS.of(connection.channel())
        : Optional.empty();
  }

  private static boolean isPost(RoutingContext call) {
    return call.request().method().equals(HttpMethod.POST);
  }

  private static boolean isOfLines(RoutingContext call) {
    String form = call.request().getHeader(HttpHeaders.CONTENT_TYPE);
    return form != null && form.startsWith(LINES);
  }

  /** Free slots: of all, and of those for long requests. */
  List<Integer> left() {
    return List.of(free.get(), freeForLong.get());
  }

  @Override
  public boolean takesSlot(RoutingContext call) {
    Taken slot = taken.get(call);
    if (slot == null || slot.isLong()) {
      return true;
    }
    if (!take(freeForLong) && !(makeRoom(true) && take(freeForLong))) {
      return false;
    }
    if (taken.replace(call, slot, slot.ofLongWork())) {
      return true;
    }
    freeForLong.incrementAndGet(); // the call ended meanwhile
    return false;
  }

  private boolean take(boolean isLong) {
    if (!take(free)) {
      return false;
    }
    if (isLong && !take(freeForLong)) {
      free.incrementAndGet();
      return false;
    }
    return true;
  }

  private static boolean take(AtomicInteger free) {
    for (int left = free.get(); left > 0; left = free.get()) {
      if (free.compareAndSet(left, left - 1)) {
        return true;
      }
    }
    return false;
  }

  /** Frees a slot once, however often a call's end is reported. */
  private void release(RoutingContext call) {
    Taken slot = taken.remove(call);
    if (slot != null) {
      free.incrementAndGet();
      if (slot.isLong()) {
        freeForLong.incrementAndGet();
      }
    }
  }

  /**
   * Rejects the call that has waited longest for its client, so that a new call gets its slot. Slow
   * clients lose nothing while slots are free.
   *
   * @param isLong whether a slot for a long request is needed
   * @return whether there was such a call
   */
  private boolean makeRoom(boolean isLong) {
    boolean onlyLong = isLong && freeForLong.get() <= 0;
    long now = System.nanoTime();
    Optional<Map.Entry<RoutingContext, Taken>> latest =
        taken.entrySet().stream()
            .filter(one -> one.getValue().isLong() || !onlyLong)
            .filter(one -> one.getValue().isLate(now, patienceInNeedNanos))
            .filter(one -> !hasArrived(one.getKey().request()))
            .min(Comparator.comparing(one -> one.getValue().since()));
    latest.ifPresent(one -> evict(one.getKey(), one.getValue()));
    return latest.isPresent();
  }

  private void evict(RoutingContext call, Taken slot) {
    release(call);
    Connection connection = slot.connection().orElseThrow();
    connection
        .channel()
        .eventLoop()
        .execute(
            () -> {
              if (!call.response().headWritten()) {
                busy.answer(call, RETRY_AFTER_SECONDS);
              }
              connection.close();
            });
  }

  /**
   * Otherwise a client that trickles its request could hold a slot indefinitely; and not every
   * disconnection is reported.
   */
  private void closeStalled() {
    long now = System.nanoTime();
    taken.forEach(
        (call, slot) -> {
          if (call.response().closed()) {
            release(call);
          } else if (!slot.ofLines()
              && now - slot.since() > patienceNanos
              && !hasArrived(call.request())) {
            call.request().connection().close();
          }
        });
  }

  /** A blocking reader stops at the declared length, before the end is signalled. */
  private static boolean hasArrived(HttpServerRequest request) {
    return request.isEnded()
        || Long.toString(request.bytesRead()).equals(request.getHeader(HttpHeaders.CONTENT_LENGTH));
  }
}
