package easewright;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** Captures the log during each test. */
public abstract class LogListening {
  protected final KeptLog log = new KeptLog();

  @BeforeEach
  void listen() {
    log.start();
  }

  @AfterEach
  void stopListening() {
    log.stop();
  }
}
