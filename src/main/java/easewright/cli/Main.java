package easewright.cli;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Starts the service, or with arguments answers them and ends. */
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

  /** Ends with 0, with 1 if a file can't be read, or with 2 if arguments or request are faulty. */
  public static void main(String... args) {
    if (args.length == 0) {
      // Read by netty once, before anything of ours is there to say so: see ConnectionWatch.
      System.setProperty("io.netty.bootstrap.extensions", "serviceload");
      Quarkus.run();
      return;
    }
    // Arguments are read twice, so that help and slips in them need no start of the application.
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
