package easewright.diagnosis;

import java.util.Comparator;
import java.util.List;

/**
 * What it changes to move one number of the book.
 *
 * @param fittings of how many whole fittings it changes the first cause
 * @param lost how many of those were right before and are wrong after
 * @param won the other way round
 * @param cases of how many page cases it changes the first cause
 */
record NumberMove(String what, String how, int fittings, int lost, int won, int cases) {
  /** A table of those that change anything, the most telling first. */
  static String table(String kind, List<NumberMove> moves) {
    StringBuilder text = new StringBuilder("%n## %s%n%n".formatted(kind));
    text.append(
        "Of %d moves %d change the first cause of a whole fitting, %d that of a case.%n%n"
            .formatted(
                moves.size(),
                moves.stream().filter(one -> one.fittings() > 0).count(),
                moves.stream().filter(one -> one.cases() > 0).count()));
    text.append("| number | moved | whole fittings | lost | won | cases |\n");
    text.append("|---|---|---|---|---|---|\n");
    moves.stream()
        .filter(one -> one.fittings() + one.cases() > 0)
        .sorted(
            Comparator.comparing((NumberMove one) -> -one.fittings())
                .thenComparing(one -> -one.cases())
                .thenComparing(NumberMove::what)
                .thenComparing(NumberMove::how))
        .forEach(one -> text.append(one.row()));
    return text.toString();
  }

  private String row() {
    return "| %s | %s | %d | %d | %d | %d |%n".formatted(what, how, fittings, lost, won, cases);
  }
}
