package easewright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Responses are compressed where the client can read it (RFC 9110, section 12.5.3), and never where
 * a secret may stand beside words of the request (BREACH, Gluck, Harris and Prado 2013, from
 * memory).
 */
@QuarkusTest
class CompressionTest {
  private static final String FITTING =
      "{\"body\": {\"bust\": \"94 cm\", \"underbust\": \"77 cm\"}, \"signs\": [{\"sign\":"
          + " \"band-rides-up-at-the-back\", \"seen\": \"present\"}]}";
  private static final String KEY = "ewo-" + "a".repeat(16) + "-" + "b".repeat(40);

  @TestHTTPResource URI service;

  private final HttpClient client = HttpClient.newHttpClient();

  private HttpRequest.Builder to(String path, String encoding) {
    HttpRequest.Builder request = HttpRequest.newBuilder(service.resolve(path));
    return encoding == null ? request : request.header("Accept-Encoding", encoding);
  }

  private HttpResponse<byte[]> send(HttpRequest.Builder request)
      throws IOException, InterruptedException {
    return client.send(request.build(), BodyHandlers.ofByteArray());
  }

  private static HttpRequest.Builder posting(HttpRequest.Builder request, String body) {
    return request.header("Content-Type", "application/json").POST(BodyPublishers.ofString(body));
  }

  private static boolean isCompressed(HttpResponse<byte[]> response) {
    return response.headers().firstValue("Content-Encoding").orElse("identity").equals("gzip");
  }

  private static String unpacked(HttpResponse<byte[]> response) throws IOException {
    assertTrue(isCompressed(response), response.headers().toString());
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(response.body()))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static String plain(HttpResponse<byte[]> response) {
    assertFalse(isCompressed(response), response.headers().toString());
    return new String(response.body(), StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/v1/signs",
        "/rules",
        "/rules/signs/straps-slip-off",
        "/openapi.json",
        "/openapi.yaml",
        "/v1/pattern-sheets/quillmere-top",
        "/v1/pattern-sheet.schema.json",
        "/v1/check-sheets/measuring",
        "/api",
        "/desk",
        "/desk/look.css"
      })
  void long_texts_without_secrets_are_compressed_for_who_can_read_it(String path) throws Exception {
    HttpResponse<byte[]> packed = send(to(path, "gzip"));
    HttpResponse<byte[]> whole = send(to(path, null));
    assertEquals(200, packed.statusCode());
    assertEquals(plain(whole), unpacked(packed));
    assertTrue(packed.body().length * 2 < whole.body().length, "" + packed.body().length);
    for (HttpResponse<byte[]> one : List.of(packed, whole)) {
      assertTrue(
          one.headers().allValues("Vary").stream()
              .anyMatch(value -> value.equalsIgnoreCase("Accept-Encoding")),
          one.headers().toString());
    }
  }

  @Test
  void an_answer_is_compressed_and_a_short_one_is_not() throws Exception {
    String whole = plain(send(posting(to("/v1/fittings", null), FITTING)));
    assertEquals(whole, unpacked(send(posting(to("/v1/fittings", "gzip"), FITTING))));
    HttpRequest.Builder text =
        posting(to("/v1/fittings?length=short", "gzip"), FITTING).header("Accept", "text/plain");
    assertTrue(plain(send(text)).length() < 1024);
  }

  @Test
  void another_encoding_is_not_forced_on_anybody() throws Exception {
    plain(send(to("/v1/signs", "identity")));
    plain(send(to("/v1/signs", "gzip;q=0")));
  }

  @Test
  void a_request_with_a_key_or_a_cookie_gets_its_answer_uncompressed() throws Exception {
    for (List<String> secret :
        List.of(
            List.of("Authorization", "Bearer " + KEY),
            List.of("Cookie", "easewright-key=" + KEY))) {
      for (String path : List.of("/v1/signs", "/rules", "/desk")) {
        plain(send(to(path, "gzip").header(secret.get(0), secret.get(1))));
      }
      plain(
          send(posting(to("/v1/fittings", "gzip"), FITTING).header(secret.get(0), secret.get(1))));
    }
  }

  @Test
  void what_belongs_to_a_clinic_is_never_compressed() throws Exception {
    HttpResponse<byte[]> opened =
        send(to("/v1/clinics/samples", "gzip").POST(BodyPublishers.noBody()));
    String clinic = plain(opened).replaceFirst("(?s).*?\"id\":\\s*\"([^\"]+)\".*", "$1");
    String key = plain(opened).replaceFirst("(?s).*?\"key\":\\s*\"([^\"]+)\".*", "$1");
    for (String path :
        List.of(
            "/v1/clinics/" + clinic + "/queue",
            "/v1/clinics/" + clinic + "/insight",
            "/desk/sign-in",
            "/desk/clinics/new",
            "/desk/clinics/" + clinic)) {
      HttpResponse<byte[]> page =
          send(
              to(path, "gzip")
                  .header("Authorization", "Bearer " + key)
                  .header("Cookie", "easewright-key=" + key));
      assertTrue(page.statusCode() < 500, path);
      plain(page);
      plain(send(to(path, "gzip")));
    }
  }

  @Test
  void lines_go_out_as_they_are() throws Exception {
    HttpResponse<byte[]> lines =
        send(
            to("/v1/fittings", "gzip")
                .header("Content-Type", "application/x-ndjson")
                .POST(BodyPublishers.ofString((FITTING + "\n").repeat(3))));
    assertEquals(3, plain(lines).lines().count());
  }
}
