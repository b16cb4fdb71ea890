package easewright.diagnosis;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Advice.SetAside;
import easewright.diagnosis.Answer.Amount;
import easewright.diagnosis.Answer.FailedNote;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.fitting.Trial;
import easewright.measure.UnitSystem;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import easewright.wording.Blanks;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What was changed or tried, and what came of it; the last word on a change counts. */
final class EarlierOutcomes {
  private static final String BETTER = "better";
  private static final String WORSE = "worse";

  private final RuleBookSource source;
  private final UnitSystem units;
  private final Map<String, EarlierAdjustment> byAdjustment = new LinkedHashMap<>();
  private final Map<String, String> sizes;
  private final EarlierAdjustment last;
  private final Set<String> satRight;
  private final Set<String> held;

  /**
   * @param tried everything that was tried, as changes
   */
  EarlierOutcomes(Fitting fitting, List<EarlierAdjustment> tried, RuleBookSource source) {
    this.source = source;
    this.units = fitting.units();
    this.sizes = TriedChanges.sizes(fitting, source);
    // A change that was made says more than a size that would have been it.
    fitting.earlier().forEach(one -> sizes.remove(one.adjustment()));
    tried.stream()
        .filter(one -> one.outcome() != null)
        .forEach(one -> byAdjustment.put(one.adjustment(), one));
    List<EarlierAdjustment> made = fitting.earlier();
    this.satRight = TrialSteps.right(fitting, source.catalog());
    this.held =
        fitting.trials().stream()
            .map(Trial::adjustment)
            .filter(id -> made.stream().noneMatch(one -> one.adjustment().equals(id)))
            .collect(Collectors.toSet());
    this.last = made.isEmpty() ? null : made.get(made.size() - 1);
  }

  /** Ids of the changes that helped, made or held for a look. */
  Set<String> helped() {
    return byAdjustment.values().stream()
        .filter(one -> one.outcome().equals(BETTER))
        .map(EarlierAdjustment::adjustment)
        .collect(Collectors.toSet());
  }

  /** Whether the wearer tried this very change and the fault was gone. */
  boolean satRight(AdjustmentEntry entry) {
    return satRight.contains(entry.id());
  }

  /** What was changed last, if it helped in part and did harm besides: it went too far. */
  Optional<EarlierAdjustment> tooFar() {
    return Optional.ofNullable(last)
        .filter(one -> WORSE.equals(one.outcome()) && !one.better().isEmpty());
  }

  /** The change as it was made last; only where there was one. */
  EarlierAdjustment lastMade() {
    return last;
  }

  /** The change made last, which alone can be put back; empty where none was made. */
  Optional<AdjustmentEntry> last() {
    return Optional.ofNullable(last).map(one -> catalog().adjustments().get(one.adjustment()));
  }

  /**
   * The change made last and by how much, in words.
   *
   * @param unnamed whether what tightens is not named
   */
  String lastInWords(boolean unnamed) {
    return unnamed && catalog().adjustments().get(last.adjustment()).tightens()
        ? source.wording().say("last-change-unnamed")
        : catalog().nameOf(last.adjustment()) + by(last);
  }

  /**
   * The change set aside, if it was tried and did not help. One that changed nothing may be offered
   * again only where a number asks for more of it, one that was too much where it asks for less.
   */
  Optional<SetAside> against(Candidate candidate) {
    EarlierAdjustment before = byAdjustment.get(candidate.entry().id());
    if (before == null || before.outcome().equals(BETTER)) {
      return Optional.empty();
    }
    boolean worse = before.outcome().equals(WORSE);
    boolean measured = candidate.told().amount() != null && !candidate.told().amount().estimated();
    return measured && (!worse || wasTooMuch(before, candidate.told().amount()))
        ? Optional.empty()
        : Optional.of(
            new SetAside(
                candidate.entry(),
                say(worse ? "held-tried-worse" : "held-tried-same", before),
                null));
  }

  /** Whether more of it than is measured was only held for a look, and so was too much. */
  private boolean wasTooMuch(EarlierAdjustment before, Amount measured) {
    boolean perSide = catalog().adjustments().get(before.adjustment()).perSide();
    return held.contains(before.adjustment())
        && before.amount() != null
        && measured.mm() + measured.plusMinusMm()
            < (perSide ? before.amount().onOneSide() : before.amount()).mm();
  }

  /**
   * Each change that did not help, in the order made.
   *
   * @param unnamed whether what tightens is not named
   */
  List<FailedNote> failed(boolean unnamed) {
    return byAdjustment.values().stream()
        .filter(one -> !one.outcome().equals(BETTER))
        .filter(one -> !unnamed || !catalog().adjustments().get(one.adjustment()).tightens())
        .map(
            one ->
                new FailedNote(
                    one.adjustment(),
                    catalog().nameOf(one.adjustment()),
                    one.amount() == null ? null : one.amount().text(units, source.wording()),
                    one.outcome(),
                    say(one.outcome().equals(WORSE) ? "tried-worse" : "tried-same", one)))
        .toList();
  }

  private String say(String sentence, EarlierAdjustment one) {
    String size = sizes.get(one.adjustment());
    return source
        .wording()
        .say(
            size == null ? sentence : sentence + "-size",
            Blanks.of("adjustment", catalog().nameOf(one.adjustment()))
                .and("by", by(one))
                .and("size", size == null ? "" : size));
  }

  private String by(EarlierAdjustment one) {
    return one.amount() == null
        ? ""
        : source.wording().say("tried-by", "amount", one.amount().text(units, source.wording()));
  }

  private Catalog catalog() {
    return source.catalog();
  }
}
