package easewright.diagnosis;

import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.AskedNote;
import easewright.diagnosis.Answer.HeldBackNote;
import easewright.fitting.Fitting;
import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.List;
import java.util.Optional;

/**
 * Answers what the wearer asked: whether to make a change. It follows the advice and adds none;
 * what may not be named because of a caution is answered without its name.
 */
final class AskedAbout {
  private final Knowledge knowledge;
  private final Restraints restraints;
  private final List<AdjustmentNote> offered;
  private final List<HeldBackNote> heldBack;
  private final boolean clear;
  private final boolean weighed;
  private final boolean cautioned;

  /**
   * @param offered the changes offered, the first one first
   * @param heldBack the changes set aside
   * @param clear whether the first cause is likely enough for the first change
   * @param weighed whether what was reported points to any cause
   * @param cautioned whether a caution stops tightening, and not only words that nobody has judged
   */
  AskedAbout(
      Knowledge knowledge,
      Restraints restraints,
      List<AdjustmentNote> offered,
      List<HeldBackNote> heldBack,
      boolean clear,
      boolean weighed,
      boolean cautioned) {
    this.knowledge = knowledge;
    this.restraints = restraints;
    this.offered = offered;
    this.heldBack = heldBack;
    this.clear = clear;
    this.weighed = weighed;
    this.cautioned = cautioned;
  }

  /**
   * One answer for each change asked about; what is answered without a name is answered once.
   *
   * @param noFault that nothing reported is a fault; null where something may be one
   */
  List<AskedNote> notes(Fitting fitting, String noFault) {
    return fitting.asksAbout().stream()
        .map(id -> knowledge.catalog().adjustments().get(id))
        .map(entry -> note(entry, noFault))
        .distinct()
        .toList();
  }

  private AskedNote note(AdjustmentEntry entry, String noFault) {
    Optional<AdjustmentNote> offer =
        offered.stream().filter(one -> one.id().equals(entry.id())).findFirst();
    if (offer.isPresent()) {
      return offered(offer.get());
    }
    if (restraints.isUnnamed(entry)) {
      return new AskedNote(
          null,
          null,
          "not-tighter",
          say(cautioned ? "asked-not-tighter" : "asked-not-tighter-unread"));
    }
    return because(entry)
        .map(because -> note(entry, "not-now", say("asked-not-now", entry, "because", because)))
        .orElseGet(() -> notInPlay(entry, noFault));
  }

  private AskedNote offered(AdjustmentNote note) {
    return switch (note.use()) {
      case "first" -> first(note);
      case "instead" -> note(note, "instead");
      default -> note(note, "later");
    };
  }

  private AskedNote first(AdjustmentNote note) {
    boolean firstOfAll = note.cures().isEmpty();
    if (!clear && !firstOfAll) {
      return note(note, "perhaps");
    }
    return note(note, note.slackOnly() ? "slack-only" : "yes");
  }

  /** Why it is not advised now, where the advice or a rule says so. */
  private Optional<String> because(AdjustmentEntry entry) {
    return heldBack.stream()
        .filter(one -> one.id().equals(entry.id()))
        .findFirst()
        .map(HeldBackNote::because)
        .or(() -> Optional.ofNullable(restraints.heldByRule(entry)).map(Advice.SetAside::because));
  }

  /** A change that treats no cause in play, or that costs more than it promises. */
  private AskedNote notInPlay(AdjustmentEntry entry, String noFault) {
    if (noFault != null) {
      return note(entry, "not-now", say("asked-no-fault", entry));
    }
    if (!offered.isEmpty()) {
      return note(
          entry, "not-now", say("asked-promises-less", entry, "first", offered.get(0).name()));
    }
    return weighed
        ? note(entry, "not-now", say("asked-promises-little", entry))
        : note(entry, "untold", say("asked-untold", entry));
  }

  private static AskedNote note(AdjustmentEntry entry, String verdict, String says) {
    return new AskedNote(entry.id(), entry.name(), verdict, says);
  }

  private AskedNote note(AdjustmentNote note, String verdict) {
    return new AskedNote(
        note.id(),
        note.name(),
        verdict,
        say("asked-" + verdict, "change", note.name(), "first", offered.get(0).name()));
  }

  private String say(String key, AdjustmentEntry entry) {
    return say(key, "change", entry.name());
  }

  private String say(String key, AdjustmentEntry entry, String blank, String text) {
    return say(key, "change", entry.name(), blank, text);
  }

  private String say(String key, Object... blanks) {
    return knowledge.source().wording().say(key, blanks);
  }
}
