package easewright.operation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.vertx.core.http.HttpClosedException;
import java.io.IOException;
import java.nio.channels.ClosedChannelException;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import org.junit.jupiter.api.Test;

/** A stranger who hangs up writes no lines of the log (CWE-779, logging of excessive data). */
class ClientFaultFilterTest {
  private static boolean isLogged(Throwable thrown) {
    LogRecord entry = new LogRecord(Level.SEVERE, "A request failed");
    entry.setThrown(thrown);
    return new ClientFaultFilter().isLoggable(entry);
  }

  @Test
  void what_clients_cause_is_left_out() {
    for (Throwable caused :
        List.of(
            new IOException(new IOException(new HttpClosedException("Connection was closed"))),
            new IOException(new ClosedChannelException()),
            new IllegalStateException("Response has already been written"),
            new IllegalArgumentException("Invalid escape sequence: %u0"))) {
      assertEquals(false, isLogged(caused), caused.toString());
    }
  }

  @Test
  void everything_else_is_logged() {
    for (Throwable ours :
        List.of(
            new IllegalStateException("An answer can't be written."),
            new IOException("No space left on device"),
            new IllegalArgumentException(),
            new NullPointerException())) {
      assertEquals(true, isLogged(ours), ours.toString());
    }
    assertEquals(true, isLogged(null));
  }
}
