package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.clinic.ClinicStore;
import io.opentelemetry.sdk.testing.exporter.InMemorySpanExporter;
import io.opentelemetry.sdk.trace.data.SpanData;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.http.ContentType;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/** Traces, if configured (OpenTelemetry semantic conventions for HTTP spans). */
@Tag("long")
@QuarkusTest
@TestProfile(TracesTest.Traced.class)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class) // the second uses up the limit
class TracesTest {
  /** A service with traces exported to memory. */
  public static class Traced implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "quarkus.otel.sdk.disabled", "false",
          "quarkus.otel.bsp.schedule.delay", "50ms",
          "easewright.limit.wrong-keys", "2 in 1H",
          "easewright.clinic.store", "target/traced-store");
    }
  }

  /** Replaces the exporter that would send them. */
  @Singleton
  static class Memory {
    @Produces
    @Singleton
    InMemorySpanExporter exporter() {
      return InMemorySpanExporter.create();
    }
  }

  @Inject ClinicStore store;
  @Inject InMemorySpanExporter exporter;

  /** Uses this machine's name, so that an IP address in a trace can only be the caller's. */
  private static RequestSpecification calling() {
    return given().header("Host", "localhost");
  }

  @Test
  @Order(1)
  void a_trace_contains_the_route_but_neither_caller_nor_request() throws Exception {
    var opened = store.clinics().open("Thursday sewing circle", "Odile", 90);
    var organiser = store.keys().holder(opened.key().text()).orElseThrow();
    String id = store.cases().open(organiser, "Wrenna").id();
    String link = store.keys().issueLink(organiser, id).text();
    calling().get("/v1/wearer-links/" + link).then().statusCode(200);
    calling().queryParam("q", "rides up somewhere").get("/rules").then().statusCode(200);
    calling()
        .header("User-Agent", "Quillfeather")
        .contentType(ContentType.JSON)
        .body("{\"text\": \"My band rides up, bust 94.7 cm\"}")
        .post("/v1/fittings")
        .then()
        .statusCode(200);

    List<SpanData> spans = finished("/v1/fittings");
    assertTrue(spans.stream().anyMatch(one -> one.getName().endsWith("/v1/wearer-links/{link}")));
    String told = spans.toString();
    for (String personal :
        List.of(
            link,
            id,
            organiser.clinic(),
            "Wrenna",
            "94.7",
            "somewhere",
            "Quillfeather",
            "127.0.0.1,")) {
      assertFalse(told.contains(personal), () -> personal + " in " + told);
    }
  }

  /** A request rejected before reaching a route has no route, and its URL stays secret. */
  @Test
  @Order(2)
  void a_trace_reveals_nothing_of_a_rejected_request() throws Exception {
    String link = "eww-zq9aaaaaaaaaaaaa-zq9aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa";
    for (int i = 0; i < 4; i++) {
      given().get("/desk/wearer/" + link);
      calling().get("/v1/wearer-links/" + link);
    }
    calling().get("/v1/wearer-links/" + link).then().statusCode(429);
    given().get("/zq9/" + link).then().statusCode(404);
    given().request("ZQ9", "/v1/wearer-links/" + link).then().statusCode(429);
    given().request("ZQ9", "/v1/signs").then().statusCode(405);
    given().get("/problems/busy").then().statusCode(200);
    String told = finished("/problems/{kind}").toString();
    assertFalse(told.contains("zq9"), told);
    assertFalse(told.contains("ZQ9"), told);
  }

  private List<SpanData> finished(String last) throws InterruptedException {
    long deadline = System.nanoTime() + Duration.ofSeconds(20).toNanos();
    while (System.nanoTime() < deadline) {
      List<SpanData> spans = exporter.getFinishedSpanItems();
      if (spans.stream().anyMatch(one -> one.getName().endsWith(last))) {
        return spans;
      }
      Thread.sleep(50);
    }
    throw new AssertionError("Not told within 20 s: " + exporter.getFinishedSpanItems());
  }
}
