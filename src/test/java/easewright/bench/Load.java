package easewright.bench;

import io.vertx.core.Vertx;
import io.vertx.core.VertxOptions;
import java.net.URI;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * Asks a service of this machine many times at once, for a while, and tells how it answered. Either
 * a number of clients who ask again once they were answered ({@link #closed}), or calls that come
 * at a rate whatever becomes of those before ({@link #open}).
 *
 * <p>It stops by itself: nothing new is asked after its time, and what is not answered within
 * {@value #PATIENCE_SECONDS} seconds counts as failed.
 */
public final class Load {
  static final int PATIENCE_SECONDS = 20;

  private final URI service;
  private final Supplier<Call> calls;
  private final Duration time;
  private final int clients;
  private final double perSecond;
  private Duration pause = Duration.ZERO;
  private int threads = 1;

  private Load(URI service, Supplier<Call> calls, Duration time, int clients, double perSecond) {
    if (!"127.0.0.1".equals(service.getHost())) {
      throw new IllegalArgumentException("Only this machine is put under load.");
    }
    this.service = service;
    this.calls = calls;
    this.time = time;
    this.clients = clients;
    this.perSecond = perSecond;
  }

  /**
   * Clients who each ask anew as soon as they were answered.
   *
   * @param service {@code http://127.0.0.1:port}
   * @param calls what to ask next; asked from one thread, from several after {@link #threads}
   */
  public static Load closed(URI service, int clients, Duration time, Supplier<Call> calls) {
    return new Load(service, calls, time, clients, 0);
  }

  /**
   * Calls at a steady rate. Their latency counts from when they were due, so that a service that
   * stalls is charged for all who would have come meanwhile.
   *
   * @param connections how many calls may be under way at once; those due then wait their turn
   */
  public static Load open(
      URI service, double perSecond, int connections, Duration time, Supplier<Call> calls) {
    return new Load(service, calls, time, connections, perSecond);
  }

  /** How long a client of a closed load waits after it was not served (429, 503, no answer). */
  public Load pausingWhenRefused(Duration pause) {
    this.pause = pause;
    return this;
  }

  /** How many threads send and receive; one unless told. Clients and rate are split among them. */
  public Load threads(int threads) {
    this.threads = threads;
    return this;
  }

  /** Runs it and waits for its end. */
  public Outcome run() throws InterruptedException {
    Vertx vertx = Vertx.vertx(new VertxOptions().setEventLoopPoolSize(threads));
    try {
      List<CompletableFuture<Outcome>> parts = new ArrayList<>();
      for (int part = 0; part < threads; part++) {
        int share = clients / threads + (part < clients % threads ? 1 : 0);
        parts.add(new LoadLoop(vertx, service, calls, share, perSecond / threads, pause).run(time));
      }
      long most = time.toSeconds() + 2 * PATIENCE_SECONDS;
      Outcome all = Outcome.none();
      for (CompletableFuture<Outcome> part : parts) {
        all = all.and(part.get(most, TimeUnit.SECONDS));
      }
      return all;
    } catch (ExecutionException | TimeoutException e) {
      throw new IllegalStateException("The load did not end by itself", e);
    } finally {
      vertx.close();
    }
  }
}
