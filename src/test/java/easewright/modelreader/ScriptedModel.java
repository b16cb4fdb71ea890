package easewright.modelreader;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * A server on this machine that answers as a chat completion would, by script. No real model was
 * tried: this shows that answers are checked, not that a model reads well.
 */
public final class ScriptedModel implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final HttpServer server;
  private final ExecutorService threads = Executors.newCachedThreadPool();
  private final List<JsonNode> requests = Collections.synchronizedList(new ArrayList<>());
  private final List<String> keys = Collections.synchronizedList(new ArrayList<>());
  private volatile Script script;

  /** Answers one request. */
  public interface Script {
    void answer(HttpExchange exchange) throws IOException;
  }

  /** Starts with nothing read. */
  public ScriptedModel() {
    try {
      server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    server.setExecutor(threads);
    server.createContext(
        "/",
        exchange -> {
          try (exchange) {
            requests.add(JSON.readTree(exchange.getRequestBody()));
            keys.add(String.valueOf(exchange.getRequestHeaders().getFirst("Authorization")));
            script.answer(exchange);
          }
        });
    says("{\"signs\": [], \"body\": [], \"circumstances\": []}");
    server.start();
  }

  /** Its address, as an operator writes it. */
  public String address() {
    return "http://127.0.0.1:" + server.getAddress().getPort() + "/v1";
  }

  /** From now on answers by this script. */
  public void does(Script other) {
    script = other;
  }

  /** From now on answers with this content. */
  public void says(String content) {
    does(exchange -> send(exchange, 200, completion(content)));
  }

  /** What was asked so far, oldest first. */
  public List<JsonNode> requests() {
    return requests;
  }

  /** The header with the key of each request. */
  public List<String> keys() {
    return keys;
  }

  /** A response around what a model says. */
  static String completion(String content) {
    try {
      return JSON.writeValueAsString(
          Map.of("choices", List.of(Map.of("message", Map.of("content", content)))));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  static void send(HttpExchange exchange, int status, String body) throws IOException {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    exchange.sendResponseHeaders(status, bytes.length == 0 ? -1 : bytes.length);
    try (OutputStream out = exchange.getResponseBody()) {
      out.write(bytes);
    }
  }

  @Override
  public void close() {
    server.stop(0);
    threads.shutdownNow();
  }
}
