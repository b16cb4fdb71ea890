package easewright.mcp;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * An assistant's connection to a service on this machine (HTTP/1.1, RFC 9112), from any address of
 * 127.0.0.0/8, all of which are this machine's loopback (RFC 1122, section 3.2.1.3).
 */
public final class Wire implements AutoCloseable {
  /** The session's header (Model Context Protocol 2025-11-25, basic/transports). */
  public static final String SESSION = "Mcp-Session-Id";

  private static final String HELLO =
      """
      {"jsonrpc": "2.0", "id": 1, "method": "initialize", "params": {
        "protocolVersion": "2025-11-25", "capabilities": {},
        "clientInfo": {"name": "%s", "version": "1"}}}
      """;

  /** An answer; names of headers are in lower case. */
  public record Answer(int status, Map<String, String> headers, String body) {
    public String session() {
      return headers.get(SESSION.toLowerCase(Locale.ROOT));
    }
  }

  private final Socket socket;
  private final InputStream in;

  public Wire(int port, String from) throws IOException {
    socket = new Socket();
    socket.bind(new InetSocketAddress(InetAddress.getByName(from), 0));
    socket.connect(new InetSocketAddress(InetAddress.getByName("127.0.0.1"), port));
    socket.setSoTimeout(30_000);
    in = new BufferedInputStream(socket.getInputStream());
  }

  /** The first message of a client with this name. */
  public static String hello(String name) {
    return HELLO.formatted(name);
  }

  /** Opens a session. */
  public Answer open() throws IOException {
    return post(null, hello("assistant"));
  }

  /** Sends a message, with or without a session. */
  public Answer post(String session, String message) throws IOException {
    return send("POST", "/mcp", session == null ? Map.of() : Map.of(SESSION, session), message);
  }

  public Answer send(String method, String path, Map<String, String> headers, String body)
      throws IOException {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("Host", "localhost");
    all.put("Accept", "application/json, text/event-stream");
    if (body != null) {
      all.put("Content-Type", "application/json");
      all.put("Content-Length", Integer.toString(body.getBytes(UTF_8).length));
    }
    all.putAll(headers);
    StringBuilder text = new StringBuilder(method + " " + path + " HTTP/1.1\r\n");
    all.forEach((name, value) -> text.append(name).append(": ").append(value).append("\r\n"));
    text.append("\r\n").append(body == null ? "" : body);
    socket.getOutputStream().write(text.toString().getBytes(UTF_8));
    return read();
  }

  private Answer read() throws IOException {
    int status = Integer.parseInt(line().split(" ")[1]);
    Map<String, String> headers = new LinkedHashMap<>();
    for (String line = line(); !line.isEmpty(); line = line()) {
      int colon = line.indexOf(':');
      headers.put(
          line.substring(0, colon).toLowerCase(Locale.ROOT), line.substring(colon + 1).strip());
    }
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    if ("chunked".equals(headers.get("transfer-encoding"))) {
      for (int size = chunk(); size > 0; size = chunk()) {
        body.writeBytes(in.readNBytes(size));
        line();
      }
      line();
    } else {
      int length = Integer.parseInt(headers.getOrDefault("content-length", "0"));
      body.writeBytes(in.readNBytes(length));
    }
    return new Answer(status, headers, body.toString(UTF_8));
  }

  private int chunk() throws IOException {
    return Integer.parseInt(line(), 16);
  }

  private String line() throws IOException {
    StringBuilder line = new StringBuilder();
    for (int read = in.read(); read != '\n'; read = in.read()) {
      if (read < 0) {
        throw new EOFException("Hung up after: " + line);
      }
      if (read != '\r') {
        line.append((char) read);
      }
    }
    return line.toString();
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
