package easewright.answering;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.diagnosis.RuleWords;
import easewright.fitting.GarmentEdge;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.pattern.SheetChoice;
import easewright.request.CircumstancesReader;
import easewright.request.FaultyRequest;
import easewright.request.FittingReader;
import easewright.request.KnownFamilies;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookFault;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RulePage;
import easewright.rulebook.check.BookCheck;
import easewright.rulebook.check.BookProblem;
import easewright.rulebook.check.KnownWords;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** A rule book in its writer's folder: checked first, compiled only if it has no faults. */
public final class OwnBook {
  private final PatternSheets sheets;
  private final KnownWords words;

  /**
   * @param sheets the shipped sheets, whose names a case may use
   */
  public OwnBook(PatternSheets sheets) {
    this.sheets = sheets;
    this.words =
        KnownWords.of(
            RuleBookSource.compiledIn(),
            CircumstancesReader.all(),
            RuleWords.FIGURES,
            Set.copyOf(GarmentEdge.wireNames()),
            choices(sheets),
            RuleWords.SHARED_PARAMETERS);
  }

  /** The words rules may use besides those the book defines. */
  public KnownWords words() {
    return words;
  }

  /** All faults of a book that can be found without compiling it; empty if there are none. */
  public List<BookProblem> problems(Path folder) {
    List<BookProblem> problems = new ArrayList<>(BookCheck.problems(folder, words));
    try {
      problems.addAll(unreadableCases(RuleBookSource.read(folder)));
    } catch (RuntimeException unreadable) {
      if (problems.isEmpty()) {
        problems.add(unexpected(unreadable));
      }
    }
    return problems;
  }

  /**
   * Checks and compiles a book (one to two seconds after a small change), answers an invented
   * fitting with it and reads an invented post, so that no client is the first to run into a fault.
   *
   * @throws BrokenBook with every fault
   * @throws UncheckedIOException if a file disappears while it is read
   */
  Edition load(Path folder) {
    try {
      List<BookProblem> problems = problems(folder);
      if (!problems.isEmpty()) {
        throw new BrokenBook(problems);
      }
      Edition edition = Edition.of(RuleBook.compile(folder), sheets);
      edition.answerOnce();
      edition.prepareTexts();
      edition.read(JsonNodeFactory.instance.objectNode().put("text", "The band rides up."));
      return edition;
    } catch (BrokenBook | UncheckedIOException expected) {
      throw expected;
    } catch (RuntimeException fault) {
      throw new BrokenBook(List.of(unexpected(fault)));
    }
  }

  private static BookProblem unexpected(RuntimeException fault) {
    return new BookProblem(
        "the book",
        0,
        fault instanceof RuleBookFault ? fault.getMessage() : "It cannot be used: " + fault + ".",
        "Undo the last change, and make it in smaller steps.");
  }

  /** Fittings of cases that the service would reject, with the problems it would report. */
  private List<BookProblem> unreadableCases(RuleBookSource book) {
    FittingReader reader = new FittingReader(KnownFamilies.of(book, sheets));
    List<BookProblem> problems = new ArrayList<>();
    for (RulePage page : book.pages().values()) {
      for (RulePage.RuleCase one : page.cases()) {
        if (!one.given().isObject() || one.given().toString().contains(BookCheck.TO_FILL_IN)) {
          continue; // the check reports it
        }
        try {
          CaseTrials.of(one, reader);
        } catch (FaultyRequest refused) {
          refused
              .faults()
              .forEach(
                  fault ->
                      problems.add(
                          new BookProblem(
                              page.path(),
                              one.line(),
                              "\""
                                  + one.heading()
                                  + "\", given"
                                  + fault.pointer()
                                  + ": "
                                  + fault.problem(),
                              fault.remedy())));
        }
      }
    }
    return problems;
  }

  private static Map<String, List<String>> choices(PatternSheets sheets) {
    Map<String, Set<String>> choices = new TreeMap<>();
    for (PatternSheet sheet : sheets.shipped()) {
      for (SheetChoice choice : sheet.choices()) {
        Set<String> options = choices.computeIfAbsent(choice.id(), id -> new LinkedHashSet<>());
        choice.options().stream().map(SheetChoice.Option::id).forEach(options::add);
      }
    }
    Map<String, List<String>> known = new TreeMap<>();
    choices.forEach((id, options) -> known.put(id, List.copyOf(options)));
    return known;
  }
}
