package easewright.cli;

import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** What the command line can be asked. */
@Command(
    name = "easewright",
    description = "Fit diagnosis for home-sewn stretch garments. Without arguments: the service.",
    subcommands = {Fit.class, Rules.class})
final class Commands {
  @Option(names = "--help", usageHelp = true, description = "Show this.")
  private boolean help;

  /**
   * Reads the arguments.
   *
   * @throws ParameterException if they ask nothing that is known
   */
  static ParseResult parsed(String... args) {
    CommandLine line = new CommandLine(new Commands());
    ParseResult parsed = line.parseArgs(args);
    ParseResult last = last(parsed);
    CommandLine named = last.commandSpec().commandLine();
    if (!last.isUsageHelpRequested() && !named.getSubcommands().isEmpty()) {
      throw new ParameterException(named, "There is no command.");
    }
    return parsed;
  }

  private static ParseResult last(ParseResult parsed) {
    return parsed.hasSubcommand() ? last(parsed.subcommand()) : parsed;
  }

  /** The command of {@code rules} that the arguments ask for; empty where they ask another. */
  static Optional<Object> rules(ParseResult parsed) {
    Object asked = last(parsed).commandSpec().userObject();
    return asked.getClass().getEnclosingClass() == Rules.class
        ? Optional.of(asked)
        : Optional.empty();
  }

  /** What is to be answered, if the arguments ask that. */
  static Fit fit(String... args) {
    return (Fit) parsed(args).subcommand().commandSpec().userObject();
  }
}
