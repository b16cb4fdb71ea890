package easewright.rulebook;

import java.nio.file.Path;

/** What the family that serves requests without one has of the project's book. */
public final class UsualBook {
  private UsualBook() {}

  /** Its rules, names and words, as they are written now. */
  public static RuleBookSource read() {
    RuleBookSource book = RuleBookSource.read(Path.of("rules"));
    return book.in(Family.usual(book.families()));
  }
}
