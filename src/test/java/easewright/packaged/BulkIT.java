package easewright.packaged;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Many fittings need no more memory than few. */
@Tag("long")
class BulkIT {
  private static final int LINES = 20_000;
  private static final byte[] ONE_SIGN =
      "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}\n".getBytes(UTF_8);

  @Test
  void twenty_thousand_lines_are_answered_with_a_heap_smaller_than_their_answers()
      throws Exception {
    int heapMb = 96;
    try (PackagedService service = PackagedService.start("-Xmx" + heapMb + "m");
        Socket socket = new Socket("127.0.0.1", service.address().getPort())) {
      new Thread(() -> send(socket)).start();
      long bytes = 0;
      int answered = 0;
      try (BufferedReader lines =
          new BufferedReader(new InputStreamReader(socket.getInputStream(), UTF_8))) {
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
          bytes += line.length();
          answered += line.startsWith("{") && line.contains("\"causes\":") ? 1 : 0;
        }
      }
      assertEquals(LINES, answered, service.log());
      assertTrue(bytes > heapMb * 1024L * 1024L, bytes + " bytes would have fitted");
    }
  }

  private static void send(Socket socket) {
    try {
      OutputStream out = socket.getOutputStream();
      out.write(
          ("POST /v1/fittings?detail=full HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                  + "Content-Type: application/x-ndjson\r\nContent-Length: "
                  + LINES * ONE_SIGN.length
                  + "\r\n\r\n")
              .getBytes(UTF_8));
      for (int line = 0; line < LINES; line++) {
        out.write(ONE_SIGN);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
