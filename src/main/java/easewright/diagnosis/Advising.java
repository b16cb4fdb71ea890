package easewright.diagnosis;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Advice.Ranked;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.Amount;
import easewright.diagnosis.Answer.CureNote;
import easewright.diagnosis.Answer.HeldBackNote;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.inference.Posterior;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.OrderOfWork;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Turns ranked adjustments into notes: amount, place, steps, check and why each comes before the
 * next.
 */
final class Advising {
  private static final int MOST = 8;
  private static final String DRAWINGS = "/drawings/";
  private static final Comparator<Telling> MOST_TELLING =
      Comparator.comparingDouble(Telling::strength)
          .reversed()
          .thenComparing(one -> one.sign().id())
          .thenComparing(one -> one.sign().amount() == null ? 0 : -one.sign().amount().mm())
          .thenComparing(one -> String.valueOf(one.sign().degree()));

  private final Fitting fitting;
  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Placing placing;
  private final Amounts amounts;
  private final UnitFormatter shown;
  private final Map<String, Amounts.Told> told = new HashMap<>();
  private final List<HeldBackNote> heldBack = new ArrayList<>();

  Advising(
      Fitting fitting, Knowledge knowledge, Posterior posterior, Placing placing, Amounts amounts) {
    this.fitting = fitting;
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.placing = placing;
    this.amounts = amounts;
    this.shown = new UnitFormatter(fitting.units());
  }

  /** The amount of an adjustment for the causes it would cure. */
  Amounts.Told told(AdjustmentEntry entry, List<Cures> cures) {
    return told.computeIfAbsent(entry.id(), id -> amounts.of(entry, telling(cures)));
  }

  /** Whether what this adjustment takes up for these cures was measured to hang loose. */
  boolean slack(AdjustmentEntry entry, List<Cures> cures) {
    return amounts.slack(entry, telling(cures)).isPresent();
  }

  private Amounts.Told told(Candidate candidate) {
    if (candidate.slackOnly()) {
      return new Amounts.Told(
          amounts.slack(candidate.entry(), telling(candidate.cures())).orElseThrow(), null);
    }
    Amounts.Told told = told(candidate.entry(), candidate.cures());
    // What a rule puts first is done though the numbers see no need: the body says otherwise.
    return candidate.byRule() && told.amount() != null && small(told.amount())
        ? amounts.firstStep(candidate.entry())
        : told;
  }

  private boolean small(Amount amount) {
    return amount.mm() < knowledge.parameter("tape-shows");
  }

  /**
   * The changes to offer.
   *
   * @param nothingTighter whether no change that tightens may be named
   */
  List<AdjustmentNote> notes(Ranked ranked, boolean nothingTighter) {
    ranked
        .setAside()
        .forEach(
            aside ->
                heldBack.add(
                    new HeldBackNote(
                        aside.entry().id(),
                        aside.entry().name(),
                        aside.because(),
                        aside.rule() == null ? null : Explaining.ref(aside.rule()))));
    List<Candidate> offered =
        ranked.offered().stream()
            .filter(one -> withinMeasure(one, nothingTighter))
            .limit(MOST)
            .toList();
    List<AdjustmentNote> notes = new ArrayList<>();
    for (int i = 0; i < offered.size(); i++) {
      Candidate next = i + 1 < offered.size() ? offered.get(i + 1) : null;
      notes.add(note(offered.get(i), next));
    }
    return notes;
  }

  /** What {@link #notes} set aside, with what was set aside before. */
  List<HeldBackNote> heldBack() {
    return heldBack;
  }

  /** Sets aside what is too small to show on a tape, and what is too much for one such change. */
  private boolean withinMeasure(Candidate candidate, boolean nothingTighter) {
    AdjustmentEntry entry = candidate.entry();
    Amount amount = told(candidate).amount();
    if (amount == null || candidate.byRule()) {
      return true;
    }
    boolean silent = nothingTighter && entry.tightens();
    if (small(amount)) {
      if (!silent) {
        heldBack.add(held(entry, "held-small", "value", amount.text()));
      }
      return false;
    }
    if (entry.limit() != null
        && entry.beyond() != null
        && amount.mm() > knowledge.parameter(entry.limit())) {
      if (!silent) {
        heldBack.add(beyondLimit(entry, amount, nothingTighter));
      }
      return false;
    }
    return true;
  }

  private HeldBackNote beyondLimit(AdjustmentEntry entry, Amount amount, boolean nothingTighter) {
    boolean alone =
        nothingTighter && knowledge.catalog().adjustments().get(entry.beyond()).tightens();
    return held(
        entry,
        alone ? "held-limit-alone" : "held-limit",
        "value",
        amount.text(),
        "limit",
        shown.length(knowledge.parameter(entry.limit())),
        "beyond",
        knowledge.catalog().nameOf(entry.beyond()));
  }

  private HeldBackNote held(AdjustmentEntry entry, String sentence, Object... blanks) {
    return new HeldBackNote(
        entry.id(), entry.name(), knowledge.source().wording().say(sentence, blanks), null);
  }

  private AdjustmentNote note(Candidate candidate, Candidate next) {
    AdjustmentEntry entry = candidate.entry();
    Amounts.Told told = told(candidate);
    List<PlaceNote> places = placing.places(entry, told.amount());
    Object[] blanks = placing.blanks(told.amount(), places);
    return new AdjustmentNote(
        entry.id(),
        entry.name(),
        does(candidate, blanks),
        Explaining.rounded(candidate.worth()),
        entry.stage(),
        entry.tightens() && !candidate.slackOnly(),
        candidate.slackOnly(),
        told.amount(),
        told.measureFirst(),
        places,
        places.isEmpty() ? null : DRAWINGS + places.get(0).line().replace(' ', '-') + ".svg",
        entry.steps().stream().map(step -> Wording.fill(step, blanks)).toList(),
        Wording.fill(entry.check(), blanks),
        sideEffects(entry),
        entry.effort(),
        entry.undo(),
        entry.declineIf() == null ? List.of() : entry.declineIf(),
        entry.why(),
        next == null ? null : before(candidate, next),
        cures(candidate),
        candidate.rules().stream().map(Explaining::ref).toList());
  }

  private String does(Candidate candidate, Object[] blanks) {
    String does = Wording.fill(candidate.entry().does(), blanks);
    return candidate.slackOnly()
        ? knowledge.source().wording().say("slack-only", "does", does)
        : does;
  }

  private List<SignNote> sideEffects(AdjustmentEntry entry) {
    List<String> ids = entry.sideEffects() == null ? List.of() : entry.sideEffects();
    return ids.stream()
        .map(id -> new SignNote(id, knowledge.catalog().nameOf(id), true, null, null, null, null))
        .toList();
  }

  private String before(Candidate first, Candidate next) {
    Wording wording = knowledge.source().wording();
    if (first.byRule()) {
      // A rule put it first of all: no relief is weighed against a warning.
      return wording.say("before-all", "first", first.entry().name());
    }
    OrderOfWork order = knowledge.catalog().practice().order();
    boolean byStage =
        first.likely()
            && next.likely()
            && order.turn(first.entry().stage()) < order.turn(next.entry().stage());
    return byStage
        ? wording.say(
            "before-stage",
            "first",
            first.entry().name(),
            "next",
            next.entry().name(),
            "order",
            first.entry().stage() + ", " + next.entry().stage())
        : wording.say("before-worth", "first", first.entry().name(), "next", next.entry().name());
  }

  private List<CureNote> cures(Candidate candidate) {
    Map<String, CureNote> byCause = new LinkedHashMap<>();
    candidate
        .cures()
        .forEach(
            cure ->
                byCause.putIfAbsent(
                    cure.cause(),
                    new CureNote(
                        cure.cause(),
                        Explaining.rounded(posterior.probability(cure.cause())),
                        knowledge.parameter(cure.howMuch()))));
    return byCause.values().stream()
        .sorted(Comparator.comparingDouble(note -> -note.probability()))
        .toList();
  }

  /** A reported sign with the strength of its strongest link. */
  private record Telling(ReportedSign sign, double strength) {}

  /** Reported signs the causes show as, those with the strongest link first. */
  private List<ReportedSign> telling(List<Cures> cures) {
    List<Telling> telling = new ArrayList<>();
    for (ReportedSign sign : fitting.signs()) {
      if (sign.present() && !knowledge.catalog().signs().get(sign.id()).redFlag()) {
        double strength = strength(sign, cures);
        if (strength > 0) {
          telling.add(new Telling(sign, strength));
        }
      }
    }
    telling.sort(MOST_TELLING);
    return telling.stream().map(Telling::sign).toList();
  }

  private double strength(ReportedSign sign, List<Cures> cures) {
    double most = 0;
    for (Cures cure : cures) {
      most = Math.max(most, posterior.network().strength(cure.cause(), sign.id()));
    }
    return most;
  }
}
