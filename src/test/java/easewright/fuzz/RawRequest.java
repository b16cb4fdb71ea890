package easewright.fuzz;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A request as bytes (RFC 9112), since clients refuse to send what a hostile one would.
 *
 * @param target path and query as sent; characters are bytes
 * @param headers in their order; characters are bytes
 */
public record RawRequest(String method, String target, Map<String, String> headers, byte[] body) {
  private static final int PATIENCE_MS = 30_000;

  /** Status 0 where the service hung up without an answer. */
  public record Answer(int status, Map<String, String> headers, String body) {
    public String header(String name) {
      return headers.getOrDefault(name.toLowerCase(Locale.ROOT), "");
    }
  }

  /** Sends it to this machine, and reads all that comes back. */
  public Answer send(int port) {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.setSoTimeout(PATIENCE_MS);
      socket.getOutputStream().write(bytes());
      socket.getOutputStream().flush();
      return read(socket);
    } catch (IOException e) {
      throw new UncheckedIOException(this.toString(), e);
    }
  }

  /** As it is sent, asking for the connection to be closed. */
  public byte[] bytes() {
    StringBuilder head = new StringBuilder(method + " " + target + " HTTP/1.1\r\n");
    headers.forEach((name, value) -> head.append(name).append(": ").append(value).append("\r\n"));
    if (body != null) {
      head.append("Content-Length: ").append(body.length).append("\r\n");
    }
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    all.writeBytes(head.append("Connection: close\r\n\r\n").toString().getBytes(ISO_8859_1));
    if (body != null) {
      all.writeBytes(body);
    }
    return all.toByteArray();
  }

  private static Answer read(Socket socket) throws IOException {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    try {
      socket.getInputStream().transferTo(all);
    } catch (SocketException hungUp) {
      // What came until then counts.
    }
    String text = all.toString(ISO_8859_1);
    int end = text.indexOf("\r\n\r\n");
    if (end < 0) {
      return new Answer(0, Map.of(), "");
    }
    List<String> head = List.of(text.substring(0, end).split("\r\n"));
    Map<String, String> headers = new LinkedHashMap<>();
    for (String line : head.subList(1, head.size())) {
      int colon = line.indexOf(':');
      headers.merge(
          line.substring(0, colon).toLowerCase(Locale.ROOT),
          line.substring(colon + 1).strip(),
          (one, other) -> one + ", " + other);
    }
    String body = text.substring(end + 4);
    String whole =
        "chunked".equals(headers.get("transfer-encoding")) ? String.join("", chunks(body)) : body;
    return new Answer(
        Integer.parseInt(head.get(0).split(" ")[1]),
        headers,
        new String(whole.getBytes(ISO_8859_1), StandardCharsets.UTF_8));
  }

  private static List<String> chunks(String body) {
    List<String> chunks = new ArrayList<>();
    int at = 0;
    while (at < body.length()) {
      int line = body.indexOf("\r\n", at);
      int length = Integer.parseInt(body.substring(at, line).strip(), 16);
      chunks.add(body.substring(line + 2, line + 2 + length));
      at = line + 2 + length + 2;
    }
    return chunks;
  }

  @Override
  public String toString() {
    String shown = body == null ? "" : new String(body, ISO_8859_1);
    return method + " " + target + " " + headers + "\n" + shown;
  }
}
