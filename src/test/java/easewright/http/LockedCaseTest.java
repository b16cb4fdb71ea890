package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.KeptLog;
import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import easewright.clinic.RealPostgres;
import easewright.deadline.DeadlinePassed;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.apache.commons.codec.digest.HmacAlgorithms;
import org.apache.commons.codec.digest.HmacUtils;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * A request that needs a row locked by another transaction gets a 503 with Retry-After (RFC 9110,
 * section 15.6.4) and does not hang; requests without a lock are answered meanwhile.
 */
@Tag("long")
@QuarkusTest
@TestProfile(LockedCaseTest.Hasty.class)
class LockedCaseTest {
  /** A service with its own database server and a timeout of one second. */
  public static class Hasty implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      Map<String, String> settings = new HashMap<>(RealPostgres.settings());
      settings.put("easewright.limit.store", "1S");
      return settings;
    }
  }

  @Inject ClinicStore store;
  @Inject RoundReader fittings;

  @ConfigProperty(name = "easewright.clinic.url")
  String url;

  private StockedClinic clinic;

  /** A request while the store is still being opened is rejected, too. */
  private StockedClinic stocked() {
    for (int i = 0; i < 30; i++) {
      try {
        return StockedClinic.in(store, fittings);
      } catch (DeadlinePassed opening) {
        // A second has passed.
      }
    }
    throw new IllegalStateException("The store does not open.");
  }

  private ValidatableResponse note() {
    return given()
        .header("Authorization", "Bearer " + clinic.helper().text())
        .contentType("application/json")
        .body("{\"text\": \"Ask about the zq7hem.\"}")
        .post("/v1/clinics/" + clinic.id() + "/cases/" + clinic.open().id() + "/notes")
        .then();
  }

  private ValidatableResponse noteAtTheDesk() {
    String key = clinic.helper().text();
    return given()
        .redirects()
        .follow(false)
        .cookie("easewright-key", key)
        .accept("text/html")
        .contentType("application/x-www-form-urlencoded;charset=UTF-8")
        .formParam("/text", "Ask about the zq7hem.")
        .formParam(
            "token",
            new HmacUtils(HmacAlgorithms.HMAC_SHA_256, "Bearer " + key)
                .hmacHex("a form of the desk"))
        .post("/desk/clinics/" + clinic.id() + "/cases/" + clinic.open().id() + "/note")
        .then();
  }

  private ValidatableResponse noteByLink() {
    return given()
        .contentType("application/json")
        .body("{\"text\": \"It is the zq7hem.\"}")
        .post("/v1/wearer-links/" + clinic.link().text() + "/notes")
        .then();
  }

  @Test
  @Timeout(120)
  void a_case_that_another_transaction_holds_is_a_503_on_every_way_to_it() throws SQLException {
    clinic = stocked();
    KeptLog log = new KeptLog();
    log.start();
    try (Connection other = connection()) {
      other.setAutoCommit(false);
      try (var lock = other.prepareStatement("select id from cases where id = ? for update")) {
        lock.setString(1, clinic.open().id());
        lock.executeQuery();
      }
      for (ValidatableResponse refused : List.of(note(), noteByLink())) {
        refused
            .statusCode(503)
            .contentType("application/problem+json")
            .header("Retry-After", "5")
            .body("type", equalTo("/problems/took-too-long"));
      }
      noteAtTheDesk()
          .statusCode(503)
          .contentType("text/html")
          .header("Retry-After", "5")
          .body(containsString("The answer took too long"));
      given()
          .header("Authorization", "Bearer " + clinic.helper().text())
          .get("/v1/clinics/" + clinic.id() + "/cases/" + clinic.open().id())
          .then()
          .statusCode(200);
      other.rollback();
    } finally {
      log.stop();
    }
    note().statusCode(201);
    noteAtTheDesk().statusCode(303);
    assertEquals(
        3, store.cases().story(clinic.caller(), clinic.open().id()).notes().size(), "kept once");
    assertEquals(List.of(), log.lines().stream().filter(line -> line.contains("zq7")).toList());
  }

  private Connection connection() throws SQLException {
    Properties user = new Properties();
    user.setProperty("user", "postgres");
    user.setProperty("password", "postgres");
    return new org.postgresql.Driver().connect(url, user);
  }
}
