package easewright.request;

import static java.util.Map.entry;

import easewright.fitting.Circumstances;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Reads other circumstances that affect comfort and safety. */
public final class CircumstancesReader {
  /** Boolean circumstances: field name, and the rule book's name for it. */
  private static final Map<String, String> BY_FIELD =
      Map.ofEntries(
          entry("nursing", "nursing"),
          entry("pregnant", "pregnant"),
          entry("operatedRecently", "operated-recently"),
          entry("implantOrExpander", "implant-or-expander"),
          entry("lymphoedemaOrNodesRemoved", "lymphoedema-or-nodes-removed"),
          entry("radiotherapy", "radiotherapy"),
          entry("chemotherapy", "chemotherapy"),
          entry("portOrPacemaker", "port-or-pacemaker"),
          entry("shingles", "shingles"),
          entry("hurtRibs", "hurt-ribs"),
          entry("prosthesisOrPocket", "prosthesis-or-pocket"),
          entry("growing", "growing"),
          entry("sleepingInIt", "sleeping-in-it"),
          entry("wearingItAllDay", "wearing-it-all-day"),
          entry("latexSensitive", "latex-sensitive"),
          entry("strapsSlackenedAlready", "adjustable-straps-slackened-already"));

  private static final List<String> FLAGS = BY_FIELD.keySet().stream().sorted().toList();

  static final String IMPACT = "impact";

  private static final String[] FIELDS =
      Stream.concat(FLAGS.stream(), Stream.of(IMPACT, "monthsSinceOperation"))
          .toArray(String[]::new);

  /** A hundred years, as the contract has it. */
  private static final int MOST_MONTHS = 1200;

  private static final List<String> IMPACTS = List.of("low", "medium", "high");

  private CircumstancesReader() {}

  /** Names of the boolean fields, in alphabetical order. */
  public static List<String> flags() {
    return FLAGS;
  }

  /** All circumstances that rules may name. */
  public static Set<String> all() {
    Set<String> all = new TreeSet<>(BY_FIELD.values());
    IMPACTS.forEach(impact -> all.add(impact + "-impact"));
    return all;
  }

  /** The field for a circumstance. */
  static String field(String circumstance) {
    return BY_FIELD.entrySet().stream()
        .filter(entry -> entry.getValue().equals(circumstance))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(IMPACT);
  }

  static Circumstances read(RequestField spot) {
    spot = spot.fields(FIELDS);
    Set<String> ids = new LinkedHashSet<>();
    for (String field : FLAGS) {
      if (spot.at(field).flag()) {
        ids.add(BY_FIELD.get(field));
      }
    }
    String impact = spot.at("impact").oneOf(IMPACTS);
    if (impact != null) {
      ids.add(impact + "-impact");
    }
    return new Circumstances(ids, spot.at("monthsSinceOperation").count(0, MOST_MONTHS));
  }
}
