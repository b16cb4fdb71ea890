package easewright.operation;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.util.Map;
import org.eclipse.microprofile.config.Config;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LimitsCheckTest {
  private static Config with(String name, String value) {
    return new SmallRyeConfigBuilder()
        .withSources(new PropertiesConfigSource(Map.of(name, value), "test", 100))
        .build();
  }

  @ParameterizedTest
  @CsvSource({
    "easewright.limit.time, PT-5S, 'a time above nothing, such as 5S'",
    "easewright.limit.arrival, PT0S, 'a time above nothing, such as 5S'",
    "easewright.limit.arrival-in-need, PT0S, 'a time above nothing, such as 5S'",
    "easewright.limit.store, PT-1M, 'a time above nothing, such as 5S'",
    "easewright.limit.at-once, 0, a number of at least 1",
    "easewright.model.timeout, PT0S, 'a time above nothing, such as 5S'",
    "easewright.model.at-once, 0, a number of at least 1",
    "easewright.limit.connections, -1, a number of at least 1"
  })
  void a_limit_that_refuses_everything_stops_the_start(String name, String value, String wanted) {
    IllegalStateException refused =
        assertThrows(IllegalStateException.class, () -> new LimitsCheck(with(name, value)));
    assertEquals(name + " has to be " + wanted + ".", refused.getMessage());
  }

  @ParameterizedTest
  @CsvSource({"easewright.limit.time, PT1S", "easewright.limit.at-once, 1"})
  void a_limit_that_lets_something_pass_is_taken(String name, String value) {
    assertDoesNotThrow(() -> new LimitsCheck(with(name, value)));
  }
}
