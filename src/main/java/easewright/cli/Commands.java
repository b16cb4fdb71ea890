package easewright.cli;

import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** The commands of the command line. */
@Command(
    name = "easewright",
    description = "Fit diagnosis for home-sewn stretch garments. Without arguments: the service.",
    subcommands = {Fit.class, Rules.class})
final class Commands {
  @Option(names = "--help", usageHelp = true, description = "Show this.")
  private boolean help;

  /**
   * Parses the arguments.
   *
   * @throws ParameterException if they contain no known command
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

  /** The {@code rules} subcommand in the arguments; empty for another command. */
  static Optional<Object> rules(ParseResult parsed) {
    Object asked = last(parsed).commandSpec().userObject();
    return asked.getClass().getEnclosingClass() == Rules.class
        ? Optional.of(asked)
        : Optional.empty();
  }

  /** The {@code fit} command in the arguments. */
  static Fit fit(String... args) {
    return (Fit) parsed(args).subcommand().commandSpec().userObject();
  }
}
