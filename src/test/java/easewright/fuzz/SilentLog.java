package easewright.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.KeptLog;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** Listens to the log while hostile requests are sent, of which nothing may stand in it. */
abstract class SilentLog {
  private final KeptLog log = new KeptLog();

  @BeforeEach
  void listen() {
    log.start();
  }

  @AfterEach
  void stopListening() {
    log.stop();
  }

  void assertNothingWasLogged() {
    assertEquals(
        List.of(), log.lines().stream().filter(line -> line.contains(Hostile.MARK)).toList());
  }
}
