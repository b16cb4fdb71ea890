package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Without a founding key only callers on the machine itself may open clinics, but none through a
 * proxy on it or under a name that was made to point to it (RFC 7239 and older headers; DNS
 * rebinding).
 */
@QuarkusTest
class FoundingTest {
  private static RequestSpecification opening() {
    return given()
        .contentType("application/json")
        .body("{\"name\": \"Circle\", \"organiser\": \"Odile\"}");
  }

  @ParameterizedTest
  @ValueSource(strings = {"localhost", "localhost:8080", "127.0.0.1", "[::1]:8080"})
  void a_caller_on_the_machine_itself_opens_one(String host) {
    opening().header("Host", host).post("/v1/clinics").then().statusCode(201);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Host: fit.example",
        "Host: localhost.fit.example",
        "Host: 192.0.2.1",
        "X-Forwarded-For: 127.0.0.1",
        "X-Forwarded-Host: localhost",
        "Forwarded: for=127.0.0.1",
        "Via: 1.1 proxy",
        "X-Real-IP: 127.0.0.1"
      })
  void a_call_through_a_proxy_or_under_another_name_opens_none(String header) {
    String name = header.split(": ")[0];
    String value = header.split(": ")[1];
    opening()
        .header(name, value)
        .post("/v1/clinics")
        .then()
        .statusCode(403)
        .contentType("application/problem+json")
        .body("type", equalTo("/problems/founding-key-needed"))
        .body("detail", containsString("easewright.clinic.founding-key"));
    given().header(name, value).post("/v1/clinics/samples").then().statusCode(403);
    for (String form : new String[] {"/desk/clinics/new", "/desk/clinics/new/sample"}) {
      given()
          .header(name, value)
          .formParam("/name", "Circle")
          .formParam("/organiser", "Odile")
          .post(form)
          .then()
          .statusCode(403)
          .header("Set-Cookie", nullValue())
          .body(containsString("easewright.clinic.founding-key"));
    }
    given()
        .header(name, value)
        .get("/desk/clinics/new")
        .then()
        .statusCode(200)
        .body(containsString("No clinics are opened here"));
  }
}
