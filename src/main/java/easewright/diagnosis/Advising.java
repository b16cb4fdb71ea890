package easewright.diagnosis;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Advice.Ranked;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CureNote;
import easewright.diagnosis.Answer.HeldBackNote;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.inference.Posterior;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.OrderOfWork;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.Comparator;
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

  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Placing placing;

  Advising(Knowledge knowledge, Posterior posterior, Placing placing) {
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.placing = placing;
  }

  /** The changes to offer, in order. */
  List<AdjustmentNote> notes(Ranked ranked) {
    List<Candidate> offered = ranked.offered().stream().limit(MOST).toList();
    List<AdjustmentNote> notes = new ArrayList<>();
    for (int i = 0; i < offered.size(); i++) {
      Candidate next = i + 1 < offered.size() ? offered.get(i + 1) : null;
      notes.add(note(offered.get(i), next));
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
                    aside.rule() == null ? null : Explaining.ref(aside.rule())))
        .toList();
  }

  private AdjustmentNote note(Candidate candidate, Candidate next) {
    AdjustmentEntry entry = candidate.entry();
    Amounts.Told told = candidate.told();
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
}
