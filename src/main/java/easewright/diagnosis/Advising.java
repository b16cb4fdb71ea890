package easewright.diagnosis;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Advice.Ranked;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.Amount;
import easewright.diagnosis.Answer.CureNote;
import easewright.diagnosis.Answer.HeldBackNote;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.inference.Posterior;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Family;
import easewright.rulebook.OrderOfWork;
import easewright.rulebook.Wording;
import easewright.wording.Blanks;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Turns ranked adjustments into notes: amount, place, steps, check and why each comes before the
 * next.
 */
final class Advising {
  private static final int MOST = 8;
  private static final String DRAWINGS = "/drawings/";

  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Placing placing;
  private final EarlierOutcomes tried;
  private final Fitting fitting;

  Advising(
      Knowledge knowledge,
      Posterior posterior,
      Placing placing,
      EarlierOutcomes tried,
      Fitting fitting) {
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.placing = placing;
    this.tried = tried;
    this.fitting = fitting;
  }

  /**
   * The changes to offer, in order.
   *
   * @param unnamed whether nothing that tightens may be named, not even to put it back
   */
  List<AdjustmentNote> notes(Ranked ranked, boolean unnamed) {
    List<Candidate> offered = ranked.offered().stream().limit(MOST).toList();
    List<AdjustmentNote> notes = new ArrayList<>();
    for (int i = 0; i < offered.size(); i++) {
      Candidate next = i + 1 < offered.size() ? offered.get(i + 1) : null;
      notes.add(note(offered.get(i), use(offered.get(0), offered.get(i)), next, unnamed));
    }
    return notes;
  }

  /** The changes set aside, each with its reason. */
  List<HeldBackNote> heldBack(Ranked ranked) {
    return ranked.setAside().stream()
        .map(
            aside ->
                new HeldBackNote(
                    aside.entry().id(),
                    aside.entry().name(),
                    aside.because(),
                    aside.rule() == null ? null : knowledge.named(aside.rule())))
        .toList();
  }

  /**
   * How a change stands to the first: another way to cure the same cause is taken instead of it, a
   * cure of another cause waits for another toile.
   */
  private String use(Candidate first, Candidate candidate) {
    if (candidate == first) {
      return "first";
    }
    boolean sameCause =
        mainCause(first)
            .filter(cause -> candidate.cures().stream().anyMatch(one -> one.cause().equals(cause)))
            .isPresent();
    return sameCause ? "instead" : "later";
  }

  /** The cause that a change relieves most here; empty where a rule put it first of all. */
  private Optional<String> mainCause(Candidate candidate) {
    return candidate.cures().stream()
        .max(
            Comparator.comparingDouble(
                cure -> posterior.probability(cure.cause()) * knowledge.parameter(cure.howMuch())))
        .map(Cures::cause);
  }

  private AdjustmentNote note(Candidate candidate, String use, Candidate next, boolean unnamed) {
    AdjustmentEntry entry = candidate.entry();
    Amounts.Told told = candidate.told();
    List<PlaceNote> places = placing.places(entry, told.amount(), seenAt(candidate));
    Object[] blanks =
        candidate.undone() == null
            ? placing.blanks(told.amount(), places)
            : new Object[] {"change", tried.lastInWords(unnamed)};
    return new AdjustmentNote(
        entry.id(),
        entry.name(),
        use,
        does(candidate, blanks),
        Explaining.rounded(candidate.worth()),
        entry.stage(),
        candidate.tightens(),
        candidate.slackOnly(),
        told.amount(),
        told.measureFirst(),
        places,
        places.isEmpty() ? null : drawing(places.get(0).line().replace(' ', '-')),
        entry.steps().stream().map(step -> Wording.fill(step, blanks)).toList(),
        Wording.fill(entry.check(), blanks),
        sideEffects(entry),
        entry.effort(),
        entry.undo(),
        entry.declineIf() == null ? List.of() : entry.declineIf(),
        entry.why(),
        next == null ? null : before(candidate, next),
        cures(candidate),
        candidate.rules().stream().map(knowledge::named).toList());
  }

  /** The garment of its family with a place marked; null where that is not drawn. */
  private String drawing(String place) {
    Family family = knowledge.source().families().get(knowledge.source().family());
    return family.outline().marks(place)
        ? DRAWINGS + place + ".svg" + (family.usual() ? "" : "?family=" + family.id())
        : null;
  }

  /** Where the signs of the causes it treats were seen, as far as said. */
  private List<String> seenAt(Candidate candidate) {
    return fitting.signs().stream()
        .filter(sign -> sign.present() && sign.place() != null)
        .filter(sign -> !knowledge.catalog().signs().get(sign.id()).redFlag())
        .filter(
            sign ->
                candidate.cures().stream()
                    .anyMatch(cure -> posterior.network().strength(cure.cause(), sign.id()) > 0))
        .map(ReportedSign::place)
        .toList();
  }

  private String does(Candidate candidate, Object[] blanks) {
    String does = withTheTried(candidate, Wording.fill(candidate.entry().does(), blanks));
    return candidate.slackOnly()
        ? knowledge.source().wording().say("slack-only", "does", does)
        : does;
  }

  /** With the amount of the trial, where the sentence itself has no place for one. */
  private String withTheTried(Candidate candidate, String does) {
    Amount amount = candidate.told().amount();
    return candidate.undone() != null
            || amount == null
            || AmountMethod.of(amount.method()) != AmountMethod.NONE
        ? does
        : knowledge
            .source()
            .wording()
            .say("does-as-tried", Blanks.of("does", does).and("amount", amount.text()));
  }

  private List<SignNote> sideEffects(AdjustmentEntry entry) {
    List<String> ids = entry.sideEffects() == null ? List.of() : entry.sideEffects();
    return ids.stream()
        .map(
            id ->
                new SignNote(
                    id, knowledge.catalog().nameOf(id), true, null, null, null, null, null, null))
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
}
