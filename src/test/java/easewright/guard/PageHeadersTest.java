package easewright.guard;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Security headers of every response (OWASP HTTP Headers and REST Security Cheat Sheets): no
 * content sniffing, no referrer, no framing, no foreign scripts.
 */
@QuarkusTest
class PageHeadersTest {
  private static final List<String> PAGES =
      List.of(
          "/rules",
          "/rules/band-too-long",
          "/rules/signs/straps-slip-off",
          "/problems/busy",
          "/v1/check-sheets/measuring",
          "/desk",
          "/desk/size",
          "/desk/cloth",
          "/desk/cut",
          "/desk/sign-in",
          "/desk/clinics/new",
          "/api/");

  @Test
  void every_page_has_security_headers() {
    for (String path : PAGES) {
      Response page = given().accept("text/html").get(path);
      assertEquals(200, page.statusCode(), path);
      assertTrue(page.contentType().startsWith("text/html"), path);
      String policy = page.header("Content-Security-Policy");
      assertTrue(policy.contains("frame-ancestors 'none'"), path);
      assertTrue(policy.startsWith("default-src '"), path);
      assertEquals("nosniff", page.header("X-Content-Type-Options"), path);
      // A form of the desk must name our origin, which it does only if the referrer reaches our
      // site.
      assertEquals(
          path.startsWith("/desk") ? "same-origin" : "no-referrer",
          page.header("Referrer-Policy"),
          path);
      assertEquals("same-origin", page.header("Cross-Origin-Opener-Policy"), path);
      assertTrue(page.header("Permissions-Policy").contains("camera=()"), path);
      assertFalse(policy.contains("script-src 'unsafe-inline'"), path);
      assertFalse(page.asString().contains("<script>"), path + " has a script within");
    }
  }

  @Test
  void what_is_no_page_runs_nothing_even_if_it_is_opened_as_one() {
    for (String path : List.of("/v1/signs", "/openapi.json", "/nothing")) {
      Response answer = given().get(path);
      assertTrue(answer.header("Content-Security-Policy").startsWith("default-src 'none'"), path);
      assertEquals("nosniff", answer.header("X-Content-Type-Options"), path);
    }
    assertTrue(
        given()
            .get("/drawings/underband.svg")
            .header("Content-Security-Policy")
            .startsWith("default-src 'none'"));
  }

  @Test
  void the_script_of_the_rule_books_list_is_our_own_file() {
    given()
        .get("/rules/find.js")
        .then()
        .statusCode(200)
        .header("X-Content-Type-Options", "nosniff");
    assertTrue(given().accept("text/html").get("/rules").asString().contains("/rules/find.js"));
  }
}
