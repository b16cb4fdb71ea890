package easewright.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The arguments of {@code rules}: a rule writer's tool. */
@Command(
    name = "rules",
    description = "Check, try and begin rules of a rule book in a folder.",
    subcommands = {Rules.Check.class, Rules.Try.class, Rules.New.class},
    footer =
        "Ends with 0 if all is well, with 1 if the book or a case has faults, with 2 if the"
            + " arguments are faulty.")
final class Rules {
  /** Default folder of a rule book. */
  static final String FOLDER = "rules";

  @Option(names = "--help", usageHelp = true, description = "Show this.")
  private boolean help;

  @Command(
      name = "check",
      description = "Name everything wrong with a rule book, by file and line.")
  static final class Check {
    @Parameters(
        arity = "0..1",
        paramLabel = "FOLDER",
        defaultValue = FOLDER,
        description = "The rule book (${DEFAULT-VALUE}).")
    String folder;

    @Option(names = "--help", usageHelp = true, description = "Show this.")
    private boolean help;
  }

  @Command(
      name = "try",
      description = "Run the cases of its pages, or answer a post in plain words with it.")
  static final class Try {
    @Parameters(
        arity = "0..2",
        paramLabel = "FOLDER|PAGE|POST",
        description =
            "The rule book (rules), then the id of a page, a file with a post, the post itself in"
                + " quotes, or - for standard input. Without the second, all cases of all pages"
                + " are run.")
    String[] what = {};

    @Option(names = "--help", usageHelp = true, description = "Show this.")
    private boolean help;
  }

  @Command(
      name = "new",
      description = "Write the files of something new; rules check then lists what to fill in.")
  static final class New {
    @Parameters(index = "0", paramLabel = "KIND", description = "One of: ${COMPLETION-CANDIDATES}.")
    Kind kind;

    @Parameters(
        index = "1",
        paramLabel = "ID",
        description = "Its name in small letters, joined by hyphens: band-too-long.")
    String id;

    @Parameters(
        index = "2",
        arity = "0..1",
        paramLabel = "FOLDER",
        defaultValue = FOLDER,
        description = "The rule book (${DEFAULT-VALUE}).")
    String folder;

    @Option(
        names = "--topic",
        paramLabel = "TOPIC",
        defaultValue = "making",
        description = "The file it is listed in, such as band (${DEFAULT-VALUE}).")
    String topic;

    @Option(names = "--help", usageHelp = true, description = "Show this.")
    private boolean help;
  }

  /** The kinds of entry that can be created. */
  enum Kind {
    cause,
    sign,
    adjustment,
    finding,
    caution
  }
}
