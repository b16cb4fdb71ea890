package easewright.bench;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpClient;
import io.vertx.core.http.HttpClientOptions;
import io.vertx.core.http.HttpClientRequest;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.RequestOptions;
import io.vertx.core.impl.ContextInternal;
import io.vertx.core.impl.VertxInternal;
import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.HdrHistogram.Histogram;

/** One thread's part of a load. Everything here happens on that thread, so nothing is locked. */
final class LoadLoop {
  private static final long MOST_MICROS = 60_000_000L;

  private final ContextInternal context;
  private final Vertx vertx;
  private final HttpClient http;
  private final Supplier<Call> calls;
  private final int clients;
  private final double perSecond;
  private final long pauseMs;
  private final URI service;

  private final Map<Integer, Long> byStatus = new TreeMap<>();
  private final Map<String, Long> failed = new TreeMap<>();
  private final Histogram served = Outcome.histogram();
  private final Histogram refused = Outcome.histogram();
  private final CompletableFuture<Outcome> outcome = new CompletableFuture<>();
  private long wrong;
  private long started;
  private long end;
  private long sent;
  private int underWay;

  LoadLoop(
      Vertx vertx,
      URI service,
      Supplier<Call> calls,
      int clients,
      double perSecond,
      Duration pause) {
    this.vertx = vertx;
    this.context = ((VertxInternal) vertx).createEventLoopContext();
    this.service = service;
    this.calls = calls;
    this.clients = clients;
    this.perSecond = perSecond;
    this.pauseMs = pause.toMillis();
    this.http =
        vertx.createHttpClient(
            new HttpClientOptions()
                .setMaxPoolSize(clients)
                .setKeepAlive(true)
                .setConnectTimeout(Load.PATIENCE_SECONDS * 1000));
  }

  CompletableFuture<Outcome> run(Duration time) {
    context.runOnContext(
        go -> {
          started = System.nanoTime();
          end = started + time.toNanos();
          if (perSecond == 0) {
            for (int client = 0; client < clients; client++) {
              send(System.nanoTime());
            }
          } else {
            sendWhatIsDue();
          }
        });
    return outcome;
  }

  private void sendWhatIsDue() {
    long now = System.nanoTime();
    for (long due = due(); due <= now && due < end && underWay < clients; due = due()) {
      sent++;
      send(due);
    }
    if (due() < end && now < end) {
      vertx.setTimer(1, tick -> sendWhatIsDue());
    } else {
      stopIfDone();
    }
  }

  private long due() {
    return started + (long) (sent * 1e9 / perSecond);
  }

  private void send(long due) {
    underWay++;
    Call call = calls.get();
    RequestOptions to =
        new RequestOptions()
            .setMethod(HttpMethod.valueOf(call.method()))
            .setHost(service.getHost())
            .setPort(service.getPort())
            .setURI(call.path())
            .setTimeout(Load.PATIENCE_SECONDS * 1000L);
    call.headers().forEach(to::putHeader);
    http.request(to)
        .compose(request -> answered(request, call, due))
        .onFailure(failure -> failed.merge(failure.getClass().getSimpleName(), 1L, Long::sum))
        .onComplete(done -> next(done.succeeded() && done.result()));
  }

  private Future<Boolean> answered(HttpClientRequest request, Call call, long due) {
    return request
        .send(Buffer.buffer(call.body()))
        .compose(
            response ->
                response.body().map(body -> record(call, response.statusCode(), body, due)));
  }

  /** Tells whether the call was served rather than refused. */
  private boolean record(Call call, int status, Buffer body, long due) {
    long micros = Math.min((System.nanoTime() - due) / 1000, MOST_MICROS);
    (status < 400 ? served : refused).recordValue(micros);
    byStatus.merge(status, 1L, Long::sum);
    if (!call.right().test(status, body.getBytes())) {
      wrong++;
    }
    return status != 429 && status != 503;
  }

  private void next(boolean wasServed) {
    underWay--;
    if (perSecond > 0 || System.nanoTime() >= end) {
      stopIfDone();
    } else if (wasServed || pauseMs == 0) {
      send(System.nanoTime());
    } else {
      underWay++; // still a client, if an idle one
      vertx.setTimer(
          pauseMs,
          rested -> {
            underWay--;
            if (System.nanoTime() < end) {
              send(System.nanoTime());
            } else {
              stopIfDone();
            }
          });
    }
  }

  private void stopIfDone() {
    boolean over = System.nanoTime() >= end || perSecond > 0 && due() >= end;
    if (over && underWay == 0 && !outcome.isDone()) {
      long neverSent = perSecond == 0 ? 0 : (long) ((end - started) / 1e9 * perSecond) - sent;
      if (neverSent > 0) {
        failed.put("NeverSent", neverSent);
      }
      double seconds = (System.nanoTime() - started) / 1e9;
      outcome.complete(new Outcome(byStatus, failed, wrong, served, refused, seconds));
    }
  }
}
