package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.clinic.ClinicStore;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import jakarta.inject.Inject;
import java.net.URI;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The metrics at {@code /q/metrics}, in the Prometheus text format 0.0.4. */
@QuarkusTest
class MetersTest {
  private static final String FITTING =
      "{\"body\": {\"bust\": \"94.7 cm\", \"underbust\": \"77 cm\"}, \"signs\": [{\"sign\":"
          + " \"band-rides-up-at-the-back\", \"seen\": \"present\"}]}";

  @TestHTTPResource(value = "/metrics", management = true)
  URI metrics;

  @Inject ClinicStore store;

  private double told(String series) {
    return given()
        .get(metrics)
        .asString()
        .lines()
        .filter(line -> line.startsWith(series))
        .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
        .sum();
  }

  private static void fit(String body, int status) {
    given().contentType(ContentType.JSON).body(body).post("/v1/fittings").then().statusCode(status);
  }

  @Test
  void requests_are_counted_by_outcome_and_the_engine_by_time_and_rules_fired() {
    String good =
        "http_server_requests_seconds_count{method=\"POST\",outcome=\"SUCCESS\",status=\"200\",uri=\"/v1/fittings\"}";
    String bad = good.replace("SUCCESS", "CLIENT_ERROR").replace("200", "422");
    double answered = told(good);
    double refused = told(bad);
    double consulted = told("easewright_engine_seconds_count");
    double fired = told("easewright_rules_fired_total");
    double seconds = told("easewright_engine_seconds_sum");
    fit(FITTING, 200);
    fit("{\"body\": {\"bust\": \"7 cm\"}}", 422);
    assertEquals(answered + 1, told(good));
    assertEquals(refused + 1, told(bad));
    assertEquals(consulted + 1, told("easewright_engine_seconds_count"));
    assertTrue(told("easewright_rules_fired_total") > fired);
    assertTrue(told("easewright_engine_seconds_sum") > seconds);
  }

  @Test
  void metrics_contain_neither_measurements_nor_keys_nor_ids() {
    var opened = store.clinics().open("Thursday sewing circle", "Odile", 90);
    String key = opened.key().text();
    var organiser = store.keys().holder(key).orElseThrow();
    String id = store.cases().open(organiser, "Wrenna").id();
    String link = store.keys().issueLink(organiser, id).text();
    fit(FITTING, 200);
    given().get("/desk/wearer/" + link).then().statusCode(200);
    given().get("/v1/wearer-links/" + link).then().statusCode(200);
    given().get("/v1/wearer-links/" + link + "x").then().statusCode(404);
    given().get("/desk/wearer/" + link + "/nowhere/" + link).then().statusCode(404);
    given()
        .header("Authorization", "Bearer " + key)
        .get("/v1/clinics/" + organiser.clinic() + "/cases/" + id)
        .then()
        .statusCode(200);
    given().queryParam("q", "rides up somewhere").get("/rules").then().statusCode(200);

    String told = given().get(metrics).asString();
    assertTrue(told.contains("uri=\"/v1/wearer-links/{link}\""), told);
    for (String personal :
        List.of(link, key, id, organiser.clinic(), "Wrenna", "Odile", "94.7", "somewhere")) {
      assertFalse(told.contains(personal), personal);
    }
  }
}
