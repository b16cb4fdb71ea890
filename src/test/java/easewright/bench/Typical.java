package easewright.bench;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.logging.Level;
import org.jboss.logmanager.LogContext;

/** The typical fitting all figures are about: eight signs, two cloths tested, a sheet by its id. */
final class Typical {
  private Typical() {}

  static byte[] bytes() {
    try (var found = Typical.class.getResourceAsStream("typical-fitting.json")) {
      return found.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static ObjectNode json() {
    try {
      return (ObjectNode) new ObjectMapper().readTree(bytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Outside the framework its log manager keeps every trace of the engine, as no service does. */
  static void silence() {
    LogContext.getLogContext().getLogger("").setLevel(Level.WARNING);
  }
}
