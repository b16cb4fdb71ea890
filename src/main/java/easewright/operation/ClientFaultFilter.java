package easewright.operation;

import io.quarkus.logging.LoggingFilter;
import io.vertx.core.http.HttpClosedException;
import java.nio.channels.ClosedChannelException;
import java.util.Set;
import java.util.logging.Filter;
import java.util.logging.LogRecord;
import org.apache.commons.lang3.exception.ExceptionUtils;

/**
 * Keeps out of the log what the framework reports as failures although a client caused it: the
 * client hung up during its request or before its response, or sent an invalid address. Any
 * stranger could otherwise fill the log.
 */
@LoggingFilter(name = "client-faults")
public final class ClientFaultFilter implements Filter {
  /** Vert.x has no exception types of its own for these. */
  private static final Set<String> MESSAGES =
      Set.of(
          "Response has already been written", "Response head already sent", "Response is closed");

  private static final String BAD_ADDRESS = "Invalid escape sequence";

  @Override
  public boolean isLoggable(LogRecord entry) {
    Throwable thrown = entry.getThrown();
    return thrown == null
        || ExceptionUtils.indexOfType(thrown, HttpClosedException.class) < 0
            && ExceptionUtils.indexOfType(thrown, ClosedChannelException.class) < 0
            && ExceptionUtils.getThrowableList(thrown).stream()
                .noneMatch(ClientFaultFilter::isOfClient);
  }

  private static boolean isOfClient(Throwable thrown) {
    String message = thrown.getMessage();
    return message != null && (MESSAGES.contains(message) || message.startsWith(BAD_ADDRESS));
  }
}
