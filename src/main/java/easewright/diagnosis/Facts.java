package easewright.diagnosis;

import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.rulebook.Catalog;
import easewright.rulebook.Wording;
import easewright.rulebook.facts.Choice;
import easewright.rulebook.facts.Circumstance;
import easewright.rulebook.facts.Earlier;
import easewright.rulebook.facts.Figure;
import easewright.rulebook.facts.Finding;
import easewright.rulebook.facts.InPlay;
import easewright.rulebook.facts.Sign;
import easewright.rulebook.facts.Trait;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** A fitting as the facts its rules see. */
final class Facts {
  private Facts() {}

  static List<Object> of(
      Fitting fitting, Draft draft, Collection<Figure> figures, List<EarlierAdjustment> tried) {
    List<Object> facts = new ArrayList<>(figures);
    for (ReportedSign sign : fitting.signs()) {
      facts.add(
          new Sign(
              sign.id(),
              sign.present(),
              sign.place() == null ? "" : sign.place(),
              fitting.isOnOneSide(sign),
              sign.when()));
    }
    fitting.choices().forEach((choice, option) -> facts.add(new Choice(choice, option)));
    draft.traits().forEach(trait -> facts.add(new Trait(trait)));
    fitting.circumstances().ids().forEach(id -> facts.add(new Circumstance(id)));
    tried.stream()
        .filter(one -> one.outcome() != null)
        .forEach(
            one -> facts.add(new Earlier(one.adjustment(), one.outcome(), isLast(one, fitting))));
    return facts;
  }

  /** Whether it is the change made last; a trial or another size is none that was made. */
  private static boolean isLast(EarlierAdjustment one, Fitting fitting) {
    List<EarlierAdjustment> made = fitting.earlier();
    return !made.isEmpty() && one == made.get(made.size() - 1);
  }

  /** A fact in words, for saying what raised a caution. */
  static String words(Object fact, Catalog catalog, Wording wording) {
    if (fact instanceof Sign sign) {
      return catalog.nameOf(sign.id());
    }
    if (fact instanceof Finding finding) {
      return catalog.nameOf(finding.id());
    }
    if (fact instanceof Circumstance circumstance) {
      return catalog.practice().circumstance(circumstance.id());
    }
    if (fact instanceof Trait trait) {
      return catalog.practice().trait(trait.id());
    }
    if (fact instanceof Figure figure) {
      return figure.formula();
    }
    if (fact instanceof InPlay inPlay) {
      String key = inPlay.likely() ? "fact-cause" : "fact-cause-possible";
      return wording.say(key, "cause", catalog.nameOf(inPlay.cause()));
    }
    if (fact instanceof Choice choice) {
      return wording.say("fact-choice", "choice", choice.id(), "option", choice.option());
    }
    if (fact instanceof Earlier earlier) {
      return wording.say(
          "fact-earlier",
          "adjustment",
          catalog.nameOf(earlier.adjustment()),
          "outcome",
          earlier.outcome());
    }
    throw new IllegalArgumentException("No words for " + fact.getClass());
  }
}
