package easewright.diagnosis;

import static java.util.stream.Collectors.toMap;

import easewright.diagnosis.Answer.CautionNote;
import easewright.fitting.Fitting;
import easewright.rulebook.Catalog.CautionEntry;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Cautioned;
import easewright.rulebook.OrderOfWork;
import easewright.rulebook.RuleText;
import easewright.rulebook.Wording;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What may hurt in a fitting, and what its answer therefore leaves out. */
final class Cautioning {
  private final Knowledge knowledge;
  private final Fitting fitting;
  private final Conclusions said;
  private final WordsLeft left;
  private final Wording wording;
  private final OrderOfWork order;

  /**
   * @param left what of a text nobody has judged yet
   */
  Cautioning(Knowledge knowledge, Fitting fitting, Conclusions said, WordsLeft left) {
    this.left = left;
    this.knowledge = knowledge;
    this.fitting = fitting;
    this.said = said;
    this.wording = knowledge.source().wording();
    this.order = knowledge.catalog().practice().order();
  }

  /**
   * Whether a danger comes before the fit. A second lock beside the rules': a red flag in the
   * catalog always is one.
   */
  boolean danger() {
    return knowledge.reportsRedFlag(fitting)
        || said.cautions().stream().anyMatch(one -> order.isDanger(entry(one.caution()).urgency()));
  }

  /** Whether nothing is said of the fit, not even for the time when the danger has passed. */
  boolean stopsHere() {
    List<CautionEntry> dangers =
        said.cautions().stream()
            .map(one -> entry(one.caution()))
            .filter(entry -> order.isDanger(entry.urgency()))
            .toList();
    return danger()
        && (dangers.isEmpty()
            || dangers.stream().anyMatch(entry -> !Boolean.TRUE.equals(entry.fitAfter())));
  }

  /** What of a text nobody has judged yet. */
  WordsLeft left() {
    return left;
  }

  /** Whether anything that tightens is left out. */
  boolean nothingTighter() {
    return danger() || left.danger() || !said.noTightening().isEmpty();
  }

  /** Every caution once, the gravest first; among dangers, the one to ask about soonest. */
  List<CautionNote> notes() {
    Set<RuleText> stopping = Set.copyOf(said.noTightening());
    Map<String, Cautioned> once =
        said.cautions().stream()
            .collect(
                toMap(
                    Cautioned::caution,
                    one -> one,
                    (first, again) -> stopping.contains(again.rule()) ? again : first,
                    LinkedHashMap::new));
    return once.values().stream()
        .map(one -> note(one, stopping.contains(one.rule())))
        .sorted(gravestFirst())
        .toList();
  }

  /** What the answer leaves out because of a caution, in a sentence; null where nothing is. */
  String notNow(List<CautionNote> notes) {
    if (danger()) {
      boolean leaveOff =
          notes.stream()
              .filter(CautionNote::isDanger)
              .anyMatch(note -> Boolean.TRUE.equals(entry(note.id()).garment()));
      return wording.say(leaveOff ? "not-now-danger-worn" : "not-now-danger");
    }
    if (said.noTightening().isEmpty()) {
      return left.danger() ? wording.say("not-now-unread") : null;
    }
    return notes.stream()
        .filter(CautionNote::stopsTightening)
        .findFirst()
        .map(note -> wording.say("not-now-tighter", "caution", note.name()))
        .orElseGet(() -> wording.say("not-now-tighter-unnamed"));
  }

  private CautionEntry entry(String id) {
    return knowledge.catalog().cautions().get(id);
  }

  private Comparator<CautionNote> gravestFirst() {
    return Comparator.comparingInt((CautionNote note) -> order.gravity(note.urgency()))
        .thenComparingInt(note -> order.soonness(note.soon()))
        .thenComparing(CautionNote::id);
  }

  private CautionNote note(Cautioned caution, boolean stopsTightening) {
    CautionEntry entry = entry(caution.caution());
    return new CautionNote(
        entry.id(),
        entry.name(),
        entry.says(),
        entry.who(),
        entry.urgency(),
        stopsTightening,
        entry.doNow(),
        entry.soon(),
        entry.soon() == null ? null : wording.say("soon-" + entry.soon()),
        entry.after(),
        caution.from().stream()
            .map(fact -> Facts.words(fact, knowledge.catalog(), wording))
            .toList(),
        knowledge.named(caution.rule()));
  }
}
