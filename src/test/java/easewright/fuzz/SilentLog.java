package easewright.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.LogListening;
import java.util.List;

/** Hostile requests are sent, of which nothing may stand in the log. */
abstract class SilentLog extends LogListening {
  void assertNothingWasLogged() {
    assertEquals(
        List.of(), log.lines().stream().filter(line -> line.contains(Hostile.MARK)).toList());
  }
}
