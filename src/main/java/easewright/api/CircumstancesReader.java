package easewright.api;

import easewright.diagnosis.Circumstances;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Reads what else bears on comfort and safety. */
final class CircumstancesReader {
  /** Circumstances that hold or don't: field name, and the rule book's name for it. */
  private static final Map<String, String> BY_FIELD =
      Map.of(
          "nursing", "nursing",
          "pregnant", "pregnant",
          "operatedRecently", "operated-recently",
          "implantOrExpander", "implant-or-expander",
          "growing", "growing",
          "sleepingInIt", "sleeping-in-it",
          "wearingItAllDay", "wearing-it-all-day",
          "latexSensitive", "latex-sensitive",
          "strapsSlackenedAlready", "adjustable-straps-slackened-already");

  static final String IMPACT = "impact";
  private static final List<String> IMPACTS = List.of("low", "medium", "high");

  private CircumstancesReader() {}

  /** Every circumstance rules may name. */
  static Set<String> all() {
    Set<String> all = new TreeSet<>(BY_FIELD.values());
    IMPACTS.forEach(impact -> all.add(impact + "-impact"));
    return all;
  }

  /** The field that says this circumstance. */
  static String field(String circumstance) {
    return BY_FIELD.entrySet().stream()
        .filter(entry -> entry.getValue().equals(circumstance))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(IMPACT);
  }

  static Circumstances read(Spot spot) {
    spot =
        spot.fields(
            Stream.concat(
                    BY_FIELD.keySet().stream().sorted(),
                    Stream.of("impact", "monthsSinceOperation"))
                .toArray(String[]::new));
    Set<String> ids = new LinkedHashSet<>();
    for (String field : BY_FIELD.keySet().stream().sorted().toList()) {
      if (spot.at(field).flag()) {
        ids.add(BY_FIELD.get(field));
      }
    }
    String impact = spot.at("impact").oneOf(IMPACTS);
    if (impact != null) {
      ids.add(impact + "-impact");
    }
    return new Circumstances(ids, spot.at("monthsSinceOperation").count(0, 1200));
  }
}
