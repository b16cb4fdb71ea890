package easewright.packaged;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a proxy adds (RFC 7239; older habits) may be anything, and is answered all the same. */
@Tag("long")
class BehindProxyIT {
  private static final int MOST_MS = 10_000;
  private static PackagedService service;

  @BeforeAll
  static void start() {
    service =
        PackagedService.start(
            "-Dquarkus.http.proxy.proxy-address-forwarding=true",
            "-Dquarkus.http.proxy.allow-forwarded=true",
            "-Dquarkus.http.proxy.allow-x-forwarded=true",
            "-Dquarkus.http.proxy.trusted-proxies=127.0.0.1");
  }

  @AfterAll
  static void stop() {
    service.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "X-Forwarded-For:",
        "X-Forwarded-For:  ",
        "X-Forwarded-For: ,",
        "X-Forwarded-For: , 192.0.2.7",
        "X-Forwarded-For: 192.0.2.7, ",
        "X-Forwarded-For: not an address",
        "X-Forwarded-For: [2001:db8::1",
        "X-Forwarded-Proto: ,",
        "X-Forwarded-Host: ,",
        "X-Forwarded-Host: a b",
        "X-Forwarded-Port: ,",
        "X-Forwarded-Port: none",
        "X-Forwarded-Port: 99999999999",
        "X-Forwarded-Prefix: ,",
        "Forwarded:",
        "Forwarded: ,",
        "Forwarded: for=",
        "Forwarded: for=\"",
        "Forwarded: for=\"[",
        "Forwarded: ;;;host=;proto=,",
        "Forwarded: for=192.0.2.7;host=\"a b\";proto=https"
      })
  void a_call_is_answered_whatever_a_proxy_adds(String header) throws IOException {
    try (Socket socket = new Socket("127.0.0.1", service.address().getPort())) {
      socket.setSoTimeout(MOST_MS);
      String request = "GET /v1/signs HTTP/1.1\r\nHost: localhost\r\n" + header + "\r\n\r\n";
      socket.getOutputStream().write(request.getBytes(ISO_8859_1));
      String status =
          new BufferedReader(new InputStreamReader(socket.getInputStream(), ISO_8859_1)).readLine();
      assertTrue(status != null && status.matches("HTTP/1.1 (200|400) .*"), header + ": " + status);
    }
  }
}
