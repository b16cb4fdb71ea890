package easewright.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** What the command line can be asked. */
@Command(
    name = "easewright",
    description = "Fit diagnosis for home-sewn stretch garments. Without arguments: the service.",
    subcommands = Fit.class)
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
    if (!parsed.hasSubcommand() && !parsed.isUsageHelpRequested()) {
      throw new ParameterException(line, "There is no command.");
    }
    return parsed;
  }

  /** What is to be answered, if the arguments ask that. */
  static Fit fit(String... args) {
    return (Fit) parsed(args).subcommand().commandSpec().userObject();
  }
}
