package easewright.cli;

import easewright.saying.Detail;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The arguments of {@code fit}. */
@Command(
    name = "fit",
    description = "Answer the fitting in a file.",
    footer = "Ends with 0, with 1 if the file can't be read, with 2 if a request is faulty.")
final class Fit {
  /** Options for the input and output format; mutually exclusive. */
  static final class Form {
    @Option(names = "--markdown", description = "Answer ready to post (the default).")
    private boolean markdown;

    @Option(names = "--short", description = "The same in under 120 words.")
    private boolean shortly;

    @Option(names = "--text", description = "The short answer as plain text.")
    private boolean text;

    @Option(names = "--json", description = "Answer as JSON, in one line.")
    private boolean json;

    @Option(names = "--lines", description = "A fitting as JSON in each line, answered in a line.")
    private boolean lines;
  }

  @Parameters(
      paramLabel = "FILE",
      description =
          "A fitting as JSON if it begins with {, else as a post in plain words; - reads "
              + "standard input.")
  private String file;

  @Option(
      names = "--pattern",
      paramLabel = "ID",
      description =
          "The pattern sheet that a post in plain words is about: a shipped one, or one in the "
              + "folder of -Deasewright.patterns.")
  private String pattern;

  @Option(
      names = "--family",
      paramLabel = "ID",
      description = "The family of garments, if neither pattern nor post tells it.")
  private String family;

  @Option(
      names = "--nickname",
      paramLabel = "NAME",
      description = "What the reply calls the wearer.")
  private String nickname;

  @Option(
      names = "--voice",
      paramLabel = "TONE",
      description = "How the reply is said: warm (the default) or plain.")
  private String voice;

  @Option(
      names = "--full",
      description = "With --json or --lines: all that led to the answer, too.")
  private boolean full;

  @ArgGroup private Form form = new Form();

  @Option(names = "--help", usageHelp = true, description = "Show this.")
  private boolean help;

  /** The file's name, or "-" for standard input. */
  String file() {
    return file;
  }

  /** The id of a shipped sheet; null if none is given. */
  String pattern() {
    return pattern;
  }

  /** The family of garments as it was written; null if none is given. */
  String family() {
    return family;
  }

  /** What the reply calls the wearer; null if none is given. */
  String nickname() {
    return nickname;
  }

  /** "warm" or "plain" as it was written; null if none is given. */
  String voice() {
    return voice;
  }

  /** Whether to print a short answer as Markdown. */
  boolean shortly() {
    return form.shortly;
  }

  /** Whether to print a short answer as plain text. */
  boolean text() {
    return form.text;
  }

  /** How much of an answer its JSON holds. */
  Detail detail() {
    return full ? Detail.FULL : Detail.LEAN;
  }

  /** Whether to print the answer as JSON. */
  boolean json() {
    return form.json;
  }

  /** Whether the file has one fitting per line. */
  boolean lines() {
    return form.lines;
  }
}
