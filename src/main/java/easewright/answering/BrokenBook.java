package easewright.answering;

import easewright.rulebook.check.BookProblem;
import java.util.List;
import java.util.stream.Collectors;

/** A rule book cannot be used; carries all its faults. */
public final class BrokenBook extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final transient List<BookProblem> problems;

  BrokenBook(List<BookProblem> problems) {
    super(
        problems.stream()
            .map(BookProblem::text)
            .collect(Collectors.joining("\n", "The rule book has faults:\n", "")));
    this.problems = List.copyOf(problems);
  }

  /** At least one fault, by file and line. */
  public List<BookProblem> problems() {
    return problems;
  }
}
