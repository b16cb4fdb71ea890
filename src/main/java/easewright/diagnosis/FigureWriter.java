package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.rulebook.Wording;
import easewright.rulebook.facts.Figure;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Collects figures, each with its formula in words, the numbers and the result put in. */
final class FigureWriter {
  private final Wording wording;
  private final UnitFormatter shown;
  private final List<Figure> figures = new ArrayList<>();

  FigureWriter(Wording wording, UnitFormatter shown) {
    this.wording = wording;
    this.shown = shown;
  }

  List<Figure> figures() {
    return figures;
  }

  /** Adds a figure whose formula is the sentence "figure-" and its id. */
  void add(String id, double value, double sd, String unit, Object... blanks) {
    say(id, "figure-" + id, value, sd, unit, blanks);
  }

  /** Adds a fraction with a sentence of its own. */
  void fraction(String id, String sentence, Estimate estimate, Object... blanks) {
    say(id, sentence, estimate.value(), estimate.sd(), "fraction", blanks);
  }

  /** Adds a figure with a sentence of its own. */
  void say(String id, String sentence, double value, double sd, String unit, Object... blanks) {
    if (!RuleWords.FIGURES.contains(id) && !id.startsWith(RuleWords.AMOUNT_OF)) {
      throw new IllegalStateException("Name this figure in RuleWords: " + id);
    }
    Object[] all = Arrays.copyOf(blanks, blanks.length + 2);
    all[blanks.length] = "value";
    all[blanks.length + 1] = shown.value(value, unit);
    figures.add(new Figure(id, value, sd, unit, wording.say(sentence, all)));
  }
}
