package easewright.mcp;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The operator can turn the assistants' endpoint off. */
@Tag("long")
@QuarkusTest
@TestProfile(TurnedOffTest.Off.class)
class TurnedOffTest {

  /** Without the protocol. */
  public static class Off implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of("easewright.mcp.enabled", "false");
    }
  }

  @Test
  void where_it_is_turned_off_nothing_is_there() {
    for (String path : new String[] {"/mcp", "/mcp/sse"}) {
      given().get(path).then().statusCode(404).body("type", equalTo("/problems/not-found"));
    }
    given().body("{}").post("/mcp").then().statusCode(404);
    given().get("/v1/signs").then().statusCode(200);
  }
}
