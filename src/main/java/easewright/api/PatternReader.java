package easewright.api;

import easewright.pattern.PatternSheet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** Reads which pattern was sewn, a shipped sheet or one sent along, the size cut and the choices. */
final class PatternReader {
  private static final int MOST_CHOICES = 30;

  private final PatternSheet sheet;
  private final String sizeCut;
  private final Map<String, String> choices = new LinkedHashMap<>();

  PatternReader(Spot pattern, Spot sizeCut, Spot choices, KnownNames known) {
    this.sheet = sheet(pattern, known);
    this.sizeCut = sheet == null ? sizeCut.text() : sizeCut.oneOf(sheet.sizes());
    readChoices(choices);
  }

  PatternSheet sheet() {
    return sheet;
  }

  String sizeCut() {
    return sizeCut;
  }

  Map<String, String> choices() {
    return choices;
  }

  private static PatternSheet sheet(Spot pattern, KnownNames known) {
    pattern = pattern.fields("sheet", "inline");
    if (!pattern.isWritten()) {
      return null;
    }
    boolean shipped = pattern.at("sheet").isWritten();
    if (shipped == pattern.at("inline").isWritten()) {
      pattern.unreadable(
          shipped ? "There are two patterns here." : "There is no pattern here.",
          "Write either \"sheet\", the id of a shipped sheet, or \"inline\", a whole sheet.");
      return null;
    }
    String id = pattern.at("sheet").oneOf(known.sheets().keySet());
    return id == null ? null : known.sheets().get(id);
  }

  /** Without a sheet any choice may be named: the rules ignore those they don't know. */
  private void readChoices(Spot spot) {
    if (spot.isWritten() && !spot.node().isObject()) {
      spot.fields();
      return;
    }
    if (spot.node().size() > MOST_CHOICES) {
      spot.impossible(
          "There are " + spot.node().size() + " choices here.",
          "At most " + MOST_CHOICES + " are taken at once.");
      return;
    }
    if (sheet != null) {
      spot.fields(sheet.choices().keySet().toArray(String[]::new));
    }
    spot.node().fieldNames().forEachRemaining(choice -> readChoice(spot.at(choice), choice));
  }

  private void readChoice(Spot spot, String choice) {
    if (sheet != null && !sheet.choices().containsKey(choice)) {
      return;
    }
    String option = sheet == null ? spot.text() : spot.oneOf(Set.copyOf(sheet.choices().get(choice)));
    if (option != null) {
      choices.put(choice, option);
    }
  }
}
