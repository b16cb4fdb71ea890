package easewright.diagnosis;

import easewright.diagnosis.Answer.Amount;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.fitting.GarmentEdge;
import easewright.fitting.PlannedEdges;
import easewright.pattern.Cut;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Says where on the pattern's own pieces a change is made, and how it is shared among them. */
final class Placing {
  private final Draft draft;
  private final Amounts amounts;
  private final Wording wording;
  private final String size;

  /**
   * @param size the size the measurements point to, or null
   */
  Placing(Draft draft, Amounts amounts, Wording wording, String size) {
    this.draft = draft;
    this.amounts = amounts;
    this.wording = wording;
    this.size = size == null ? wording.say("blank-size") : size;
  }

  /** What to put into the blanks of an adjustment's sentences. */
  Object[] blanks(Amount amount, List<PlaceNote> places) {
    PlaceNote first = places.isEmpty() ? null : places.get(0);
    String some = wording.say("blank-amount");
    String each = first == null || first.each() == null ? null : first.each().text();
    return new Object[] {
      "amount", amount == null ? some : amount.text(),
      "each", each == null ? wording.say("blank-each") : each,
      "edges", first == null ? wording.say("blank-edges") : String.valueOf(edges(places)),
      "place", placeWords(places),
      "size", size
    };
  }

  /** Edges of the line on the pieces that make the girth; linings repeat them. */
  private static int edges(List<PlaceNote> places) {
    String line = places.get(0).line();
    return places.stream()
        .filter(place -> place.line().equals(line) && !place.follows())
        .mapToInt(PlaceNote::edges)
        .sum();
  }

  private String placeWords(List<PlaceNote> places) {
    if (places.isEmpty()) {
      return wording.say("blank-place");
    }
    String line = places.get(0).line();
    List<String> pieces =
        places.stream()
            .filter(place -> place.line().equals(line) && place.piece() != null)
            .filter(place -> !place.follows())
            .map(PlaceNote::piece)
            .distinct()
            .toList();
    return pieces.isEmpty()
        ? wording.say("place-line", "line", line)
        : wording.say("place-pieces", "line", line, "pieces", String.join(", ", pieces));
  }

  /**
   * The first of the adjustment's lines that the pieces cut have, then those of matching pieces;
   * the line's name alone without a sheet.
   *
   * @param seenAt places at which the signs of what it cures were seen
   */
  List<PlaceNote> places(AdjustmentEntry entry, Amount amount, List<String> seenAt) {
    List<String> lines = lines(entry, seenAt);
    for (String line : lines) {
      List<PlaceNote> found = onPieces(line, amount);
      if (!found.isEmpty()) {
        List<PlaceNote> all = new ArrayList<>(found);
        if (entry.alsoAt() != null) {
          entry.alsoAt().stream()
              .filter(other -> !other.equals(line))
              .forEach(other -> all.addAll(onPieces(other, amount)));
        }
        return all;
      }
    }
    return lines.stream()
        .limit(1)
        .filter(line -> draft.cut().isEmpty())
        .map(line -> new PlaceNote(null, line.replace('-', ' '), 1, null, false, false))
        .toList();
  }

  private List<String> lines(AdjustmentEntry entry, List<String> seenAt) {
    List<String> lines = entry.at() == null ? List.of() : entry.at();
    if (!entry.atElastic()) {
      return lines;
    }
    Optional<Set<String>> elastic = draft.linesWithElastic();
    Optional<GarmentEdge> measured = amounts.edge(entry);
    Predicate<String> first =
        measured.isPresent()
            ? line -> PlannedEdges.lines(measured.get()).contains(line)
            : line -> seenAt.stream().anyMatch(line::contains);
    return lines.stream()
        .filter(line -> elastic.isEmpty() || elastic.get().contains(line))
        .sorted(Comparator.comparing(line -> !first.test(line)))
        .toList();
  }

  private List<PlaceNote> onPieces(String line, Amount amount) {
    return draft.cut().map(cut -> cut.share(1, line)).orElse(List.of()).stream()
        .map(
            share ->
                new PlaceNote(
                    share.piece().name(),
                    line.replace('-', ' '),
                    share.piece().occurrences(),
                    amount == null ? null : amounts.part(amount, eachShare(amount, share)),
                    amount != null && AmountMethod.of(amount.method()).splits(),
                    share.copy()))
        .toList();
  }

  /** Only a change of girth is split over edges; a fold, wedge or length is whole on each piece. */
  private static double eachShare(Amount amount, Cut.Share share) {
    return AmountMethod.of(amount.method()).splits() ? share.eachMm() : 1;
  }
}
