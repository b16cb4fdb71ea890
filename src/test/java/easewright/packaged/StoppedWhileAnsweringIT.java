package easewright.packaged;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.ConnectException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** SIGTERM amid requests: what was taken is finished, what comes after is refused. */
@Tag("long")
class StoppedWhileAnsweringIT {
  private static final String ONE_SIGN = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}\n";
  private static final int LINES_AFTER = 20;
  private static final int MOST_SECONDS = 25;

  @Test
  void what_was_taken_is_finished_and_what_comes_after_is_refused() throws Exception {
    try (PackagedService service = PackagedService.start();
        Socket lines = new Socket("127.0.0.1", service.address().getPort());
        Socket single = new Socket("127.0.0.1", service.address().getPort())) {
      int half = ONE_SIGN.length() / 2;
      write(single, head("application/json", ONE_SIGN.length()) + ONE_SIGN.substring(0, half));
      int all = (1 + LINES_AFTER) * ONE_SIGN.length();
      write(lines, head("application/x-ndjson", all) + ONE_SIGN);
      BufferedReader answers = reader(lines);
      assertTrue(nextAnswer(answers), service.log());

      service.terminate();
      refused(service.address());

      write(single, ONE_SIGN.substring(half));
      assertTrue(nextAnswer(reader(single)), service.log());
      for (int line = 0; line < LINES_AFTER; line++) {
        write(lines, ONE_SIGN);
        assertTrue(nextAnswer(answers), "line " + line + "\n" + service.log());
      }
      assertTrue(service.endsWithin(MOST_SECONDS), service.log());
    }
  }

  private static void refused(URI address) throws IOException, InterruptedException {
    HttpClient client = HttpClient.newHttpClient();
    HttpRequest request =
        HttpRequest.newBuilder(address.resolve("/v1/fittings"))
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(ONE_SIGN))
            .build();
    try {
      HttpResponse<String> answer = client.send(request, BodyHandlers.ofString());
      // The signal takes a moment to arrive; what came before it is answered.
      for (int tries = 0; answer.statusCode() == 200 && tries < 100; tries++) {
        Thread.sleep(20);
        answer = client.send(request, BodyHandlers.ofString());
      }
      assertEquals(503, answer.statusCode());
      assertTrue(answer.body().contains("/problems/busy"), answer.body());
      assertNotNull(answer.headers().firstValue("Retry-After").orElse(null));
    } catch (ConnectException closed) {
      assertNotNull(closed); // it no longer listens, which refuses as well
    }
  }

  private static String head(String form, int length) {
    return "POST /v1/fittings HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: "
        + form
        + "\r\nContent-Length: "
        + length
        + "\r\n\r\n";
  }

  private static void write(Socket socket, String text) throws IOException {
    OutputStream out = socket.getOutputStream();
    out.write(text.getBytes(UTF_8));
    out.flush();
  }

  private static BufferedReader reader(Socket socket) throws IOException {
    return new BufferedReader(new InputStreamReader(socket.getInputStream(), UTF_8));
  }

  /** Whether an answer follows, after whatever headers and lengths of chunks stand before it. */
  private static boolean nextAnswer(BufferedReader answers) throws IOException {
    for (String line = answers.readLine(); line != null; line = answers.readLine()) {
      if (line.startsWith("{")) {
        return line.contains("\"causes\":");
      }
    }
    return false;
  }
}
