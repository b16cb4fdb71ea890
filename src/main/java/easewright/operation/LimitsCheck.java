package easewright.operation;

import io.quarkus.runtime.Startup;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.List;
import org.eclipse.microprofile.config.Config;

/** Prevents start-up with limits that would reject everything, or nothing. */
@Startup
@Singleton
class LimitsCheck {
  private static final List<String> TIMES =
      List.of(
          "easewright.limit.time",
          "easewright.limit.store",
          "easewright.limit.arrival",
          "easewright.limit.arrival-in-need",
          "easewright.model.timeout");
  private static final List<String> COUNTS =
      List.of(
          "easewright.limit.at-once",
          "easewright.limit.at-once-of-long",
          "easewright.limit.connections",
          "easewright.limit.connections-of-one-place",
          "easewright.mcp.sessions",
          "easewright.mcp.sessions-of-one-place",
          "easewright.model.at-once");

  LimitsCheck(Config config) {
    for (String name : TIMES) {
      config
          .getOptionalValue(name, Duration.class)
          .filter(time -> time.isNegative() || time.isZero())
          .ifPresent(time -> refuse(name, "a time above nothing, such as 5S"));
    }
    for (String name : COUNTS) {
      config
          .getOptionalValue(name, Integer.class)
          .filter(count -> count < 1)
          .ifPresent(count -> refuse(name, "a number of at least 1"));
    }
  }

  private static void refuse(String name, String wanted) {
    throw new IllegalStateException(name + " has to be " + wanted + ".");
  }
}
