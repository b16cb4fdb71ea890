package easewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import easewright.answering.BrokenBook;
import easewright.answering.PageCases;
import easewright.answering.TrialBook;
import easewright.naming.NearestName;
import easewright.pattern.PatternSheets;
import easewright.request.Fault;
import easewright.request.FaultyRequest;
import easewright.rulebook.RulePage;
import easewright.rulebook.check.BookProblem;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Runs a rule writer's commands, without a service, and prints plain lines. */
final class RulesRun {
  private static final int FAULTS = 1;
  private static final int FAULTY = 2;
  private static final int MOST_BYTES = 64 * 1024;

  private final PatternSheets sheets = new PatternSheets();
  private final InputStream in;
  private final PrintStream out;
  private final PrintStream err;

  /** Reads and writes UTF-8 whatever the locale. */
  RulesRun(InputStream in, OutputStream out, OutputStream err) {
    this.in = in;
    this.out = new PrintStream(out, true, UTF_8);
    this.err = new PrintStream(err, true, UTF_8);
  }

  /** Runs a command and returns the exit code: 0, 1 or 2. */
  int run(Object command) {
    try {
      if (command instanceof Rules.Check check) {
        return check(Path.of(check.folder));
      }
      if (command instanceof Rules.Try trial) {
        return tried(trial.what);
      }
      Rules.New begun = (Rules.New) command;
      return new NewEntry(Path.of(begun.folder), out, err).write(begun.kind, begun.id, begun.topic);
    } catch (InvalidPathException | IOException unreadable) {
      err.println("The folder or file cannot be read or written: " + unreadable.getMessage());
      return FAULTY;
    } catch (UncheckedIOException unreadable) {
      err.println("The folder cannot be read: " + unreadable.getCause().getMessage());
      return FAULTY;
    }
  }

  private int check(Path folder) {
    if (isNoBook(folder)) {
      return FAULTY;
    }
    try {
      int rules = TrialBook.of(folder, sheets).rules();
      out.println("The rule book is sound: " + rules + " rules.");
      return 0;
    } catch (BrokenBook broken) {
      print(broken.problems());
      return FAULTS;
    }
  }

  private boolean isNoBook(Path folder) {
    if (Files.exists(folder.resolve("vocabulary.dsl"))) {
      return false;
    }
    err.println(
        "There is no rule book in \"" + folder + "\": name a folder that holds vocabulary.dsl.");
    return true;
  }

  private void print(List<BookProblem> problems) {
    problems.forEach(one -> out.println(one.text()));
    out.println(problems.size() + (problems.size() == 1 ? " fault." : " faults."));
  }

  private int tried(String[] what) throws IOException {
    boolean folderNamed = what.length > 0 && Files.exists(Path.of(what[0], "vocabulary.dsl"));
    Path folder = Path.of(folderNamed ? what[0] : Rules.FOLDER);
    if (what.length == 2 && !folderNamed) {
      isNoBook(Path.of(what[0]));
      return FAULTY;
    }
    if (isNoBook(folder)) {
      return FAULTY;
    }
    Optional<String> asked =
        what.length > (folderNamed ? 1 : 0)
            ? Optional.of(what[folderNamed ? 1 : 0])
            : Optional.empty();
    try {
      TrialBook book = TrialBook.of(folder, sheets);
      if (asked.isEmpty()) {
        return cases(book, List.copyOf(book.pages().values()));
      }
      RulePage page = book.pages().get(asked.get().replaceFirst("^.*/", "").replace(".md", ""));
      if (page != null) {
        return cases(book, List.of(page));
      }
      Optional<String> post = post(asked.get());
      if (post.isEmpty()) {
        err.println(
            "\""
                + asked.get()
                + "\" is no page and no file. "
                + NearestName.remedy(asked.get(), book.pages().keySet())
                    .replace(
                        "Look the name up in the list the service publishes.",
                        "Write the id of a page, a file's name, or a post in quotes."));
        return FAULTY;
      }
      return answered(book, post.get());
    } catch (BrokenBook broken) {
      print(broken.problems());
      return FAULTS;
    }
  }

  /** A text of several words is the post itself. */
  private Optional<String> post(String asked) throws IOException {
    if (asked.equals("-")) {
      return Optional.of(new String(in.readNBytes(MOST_BYTES), UTF_8).strip());
    }
    if (asked.strip().contains(" ") && !Files.exists(Path.of(asked))) {
      return Optional.of(asked.strip());
    }
    return Files.isRegularFile(Path.of(asked))
        ? Optional.of(Files.readString(Path.of(asked)).strip())
        : Optional.empty();
  }

  private int cases(TrialBook book, List<RulePage> pages) {
    int run = 0;
    int failed = 0;
    for (RulePage page : pages) {
      for (RulePage.RuleCase one : page.cases()) {
        run++;
        List<String> wrong = book.wrong(one);
        if (!wrong.isEmpty()) {
          failed++;
          out.println(PageCases.place(page, one));
          wrong.forEach(line -> out.println("  " + line));
        }
      }
    }
    out.println(run + " cases, " + (failed == 0 ? "all hold." : failed + " do not hold."));
    return failed == 0 ? 0 : FAULTS;
  }

  private int answered(TrialBook book, String post) {
    try {
      book.answer(post).forEach(out::println);
      return 0;
    } catch (FaultyRequest refused) {
      for (Fault fault : refused.faults()) {
        out.println(fault.problem() + " " + fault.remedy());
      }
      return FAULTS;
    }
  }
}
