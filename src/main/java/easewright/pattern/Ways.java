package easewright.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** All combinations of the choices of a sheet. */
final class Ways {

  /** Keeps the largest legal sheet within a second. */
  static final int MOST = 512;

  private Ways() {}

  /** Number of combinations, allowed or not. */
  static long count(List<SheetChoice> choices) {
    return choices.stream().mapToLong(choice -> choice.options().size()).reduce(1, (a, b) -> a * b);
  }

  /** The combinations whose options are compatible: option ids by choice id. */
  static List<Map<String, String>> allowed(List<SheetChoice> choices) {
    List<Map<String, String>> ways = new ArrayList<>();
    add(choices, new LinkedHashMap<>(), ways);
    return ways;
  }

  private static void add(
      List<SheetChoice> choices, Map<String, String> chosen, List<Map<String, String>> ways) {
    if (chosen.size() < choices.size()) {
      SheetChoice choice = choices.get(chosen.size());
      for (SheetChoice.Option option : choice.options()) {
        chosen.put(choice.id(), option.id());
        add(choices, chosen, ways);
        chosen.remove(choice.id());
      }
    } else if (choices.stream()
        .allMatch(c -> c.option(chosen.get(c.id())).orElseThrow().allowedBy(chosen))) {
      ways.add(new LinkedHashMap<>(chosen));
    }
  }

  /** A combination in the sheet's terms, such as "back/wide, hem/cased". */
  static String said(Map<String, String> way) {
    return way.isEmpty()
        ? "any choice"
        : way.entrySet().stream()
            .map(entry -> entry.getKey() + "/" + entry.getValue())
            .collect(Collectors.joining(", "));
  }
}
