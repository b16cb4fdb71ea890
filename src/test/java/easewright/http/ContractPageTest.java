package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.fuzz.Endpoints;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The contract's page loads nothing from other sites, runs no scripts, and omits nothing of the
 * contract.
 */
@QuarkusTest
class ContractPageTest {
  private static Response page() {
    return given().accept("text/html").get("/api");
  }

  @Test
  void it_shows_our_name_and_no_other() {
    for (String address : List.of("/api", "/api/")) {
      Response page = given().accept("text/html").get(address);
      assertEquals(200, page.statusCode(), address);
      String told = page.asString();
      assertTrue(told.contains("<title>The contract · Easewright</title>"), address);
      assertTrue(told.contains("<header><p><strong>Easewright</strong>"), address);
      for (String other : List.of("swagger", "quarkus", "smartbear", "redhat", "logo")) {
        assertFalse(told.toLowerCase(Locale.ROOT).contains(other), other);
      }
      assertFalse(told.contains("<script"), address);
      assertFalse(page.header("Content-Security-Policy").contains("script-src 'unsafe-inline'"));
    }
  }

  @Test
  void every_operation_and_every_form_of_the_contract_is_on_it() {
    String told = page().asString();
    JsonNode contract = Endpoints.contract();
    int operations = 0;
    for (JsonNode path : contract.path("paths")) {
      for (JsonNode operation : path) {
        if (operation.has("operationId")) {
          operations++;
          String id = operation.path("operationId").textValue();
          assertTrue(told.contains("id=\"" + id + "\""), id);
        }
      }
    }
    assertTrue(operations > 40, "operations: " + operations);
    for (Map.Entry<String, JsonNode> form : contract.at("/components/schemas").properties()) {
      assertTrue(told.contains("id=\"form-" + form.getKey() + "\""), form.getKey());
    }
  }

  @Test
  void every_link_within_it_and_to_an_example_leads_somewhere() {
    String told = page().asString();
    Matcher links = Pattern.compile("href=\"([^\"]+)\"").matcher(told);
    int followed = 0;
    while (links.find()) {
      String link = links.group(1);
      if (link.startsWith("#")) {
        assertTrue(told.contains("id=\"" + link.substring(1) + "\""), link);
      } else if (link.startsWith("/examples/")) {
        assertEquals(200, given().get(link).statusCode(), link);
      }
      followed++;
    }
    assertTrue(followed > 200, "links: " + followed);
  }

  /** The commands on the page send the contract's examples. */
  @Test
  void a_command_to_try_is_given_for_each_operation() {
    String told = page().asString();
    assertTrue(
        told.contains("/v1/fittings' -H 'Content-Type: application/json' -d @first-fitting.json"),
        told.substring(0, Math.min(told.length(), 200)));
    assertTrue(told.contains("-X DELETE 'http://127.0.0.1:"), "deleting");
  }
}
