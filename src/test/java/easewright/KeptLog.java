package easewright;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jboss.logmanager.ExtLogRecord;
import org.jboss.logmanager.formatters.PatternFormatter;

/** Records the log between start and stop, each line with its category and its trace. */
public final class KeptLog extends Handler {
  private final List<String> lines = new CopyOnWriteArrayList<>();
  private final PatternFormatter form = new PatternFormatter("%c %s");

  public void start() {
    Logger.getLogger("").addHandler(this);
  }

  public void stop() {
    Logger.getLogger("").removeHandler(this);
  }

  public List<String> lines() {
    return lines;
  }

  @Override
  public void publish(LogRecord line) {
    StringWriter trace = new StringWriter();
    if (line.getThrown() != null) {
      line.getThrown().printStackTrace(new PrintWriter(trace));
    }
    lines.add(form.format(ExtLogRecord.wrap(line)) + trace);
  }

  @Override
  public void flush() {}

  @Override
  public void close() {}
}
