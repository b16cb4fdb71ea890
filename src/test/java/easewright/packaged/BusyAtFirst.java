package easewright.packaged;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A gateway before the service that turns the first requests away, and passes on the rest. */
final class BusyAtFirst implements AutoCloseable {
  private final HttpServer gateway;
  private final URI service;
  private final HttpClient client = HttpClient.newHttpClient();
  private final List<String> asked = new CopyOnWriteArrayList<>();
  private final int turnedAway;
  private final int status;

  /**
   * @param turnedAway how many requests get the status
   * @param status 429 or 503; sent with a Retry-After of one second
   */
  BusyAtFirst(URI service, int turnedAway, int status) throws IOException {
    this.service = service;
    this.turnedAway = turnedAway;
    this.status = status;
    gateway = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    gateway.createContext("/", this::handle);
    gateway.start();
  }

  String address() {
    return "http://127.0.0.1:" + gateway.getAddress().getPort();
  }

  /** The bodies of all requests in order, those turned away among them. */
  List<String> asked() {
    return List.copyOf(asked);
  }

  @Override
  public void close() {
    gateway.stop(0);
  }

  private void handle(HttpExchange exchange) throws IOException {
    byte[] body = exchange.getRequestBody().readAllBytes();
    asked.add(new String(body, StandardCharsets.UTF_8));
    if (asked.size() <= turnedAway) {
      exchange.getResponseHeaders().set("Retry-After", "1");
      exchange.getResponseHeaders().set("Content-Type", "application/problem+json");
      String problem =
          "{\"type\":\"/problems/busy\",\"title\":\"Busy\",\"status\":"
              + status
              + ",\"detail\":\"Come again.\"}";
      send(exchange, status, problem.getBytes());
      return;
    }
    HttpRequest.Builder request =
        HttpRequest.newBuilder(service.resolve(exchange.getRequestURI()))
            .method(exchange.getRequestMethod(), BodyPublishers.ofByteArray(body));
    for (String name : new String[] {"Content-Type", "Accept"}) {
      request.header(name, exchange.getRequestHeaders().getFirst(name));
    }
    try {
      HttpResponse<byte[]> answer = client.send(request.build(), BodyHandlers.ofByteArray());
      answer
          .headers()
          .firstValue("Content-Type")
          .ifPresent(form -> exchange.getResponseHeaders().set("Content-Type", form));
      send(exchange, answer.statusCode(), answer.body());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }

  private static void send(HttpExchange exchange, int status, byte[] body) throws IOException {
    exchange.sendResponseHeaders(status, body.length);
    exchange.getResponseBody().write(body);
    exchange.close();
  }
}
