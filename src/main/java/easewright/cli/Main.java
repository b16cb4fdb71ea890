package easewright.cli;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Starts the service, or with arguments runs a command and exits. */
@QuarkusMain
public final class Main {
  private static final Map<String, String> WITHOUT_SERVER =
      Map.of(
          "quarkus.http.host-enabled", "false",
          "quarkus.management.host-enabled", "false",
          "easewright.batch.brokers", "",
          "quarkus.log.console.stderr", "true",
          "quarkus.log.level", "ERROR");

  private Main() {}

  /** Exit code 0; 1 if a file cannot be read; 2 if arguments or request are faulty. */
  public static void main(String... args) {
    if (args.length == 0) {
      // Netty reads this once, before our own code runs: see ConnectionWatch.
      System.setProperty("io.netty.bootstrap.extensions", "serviceload");
      Quarkus.run();
      return;
    }
    // Arguments are parsed twice, so that help and errors need no start of the application.
    try {
      ParseResult parsed = Commands.parsed(args);
      if (CommandLine.printHelpIfRequested(parsed)) {
        return;
      }
      Optional<Object> rules = Commands.rules(parsed);
      if (rules.isPresent()) {
        System.exit(new RulesRun(System.in, System.out, System.err).run(rules.get()));
      }
    } catch (ParameterException slip) {
      System.err.println(slip.getMessage());
      slip.getCommandLine().usage(System.err);
      System.exit(FitRun.FAULTY);
    }
    WITHOUT_SERVER.forEach(System::setProperty);
    Quarkus.run(FitRun.class, args);
  }
}
