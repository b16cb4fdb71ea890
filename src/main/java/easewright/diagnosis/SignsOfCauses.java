package easewright.diagnosis;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toSet;

import easewright.inference.Question.Ask;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Conclusions.Shows;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** What the signs of a rule book tell of its causes in any fitting, prepared once. */
final class SignsOfCauses {
  private final Map<String, List<Ask>> asks = new HashMap<>();
  private final Map<String, Set<String>> areas;
  private final Map<String, List<String>> measuredBy = new HashMap<>();

  /**
   * @param shows what causes show as in any fitting
   * @param ask what asking about a sign costs, and how far its replies are believed
   */
  SignsOfCauses(Catalog catalog, Collection<Shows> shows, Function<SignEntry, Ask> ask) {
    Map<String, Map<String, Ask>> askedOnce = new HashMap<>();
    for (Shows one : shows) {
      SignEntry sign = catalog.signs().get(one.sign());
      if (sign != null) {
        askedOnce
            .computeIfAbsent(one.cause(), cause -> new LinkedHashMap<>())
            .computeIfAbsent(one.sign(), id -> ask.apply(sign));
      }
    }
    askedOnce.forEach((cause, ofSign) -> asks.put(cause, List.copyOf(ofSign.values())));
    areas =
        shows.stream()
            .collect(
                groupingBy(
                    Shows::sign, mapping(s -> catalog.causes().get(s.cause()).area(), toSet())));
    for (SignEntry sign : catalog.signs().values()) {
      if (sign.measures() != null && !sign.redFlag()) {
        for (String method : sign.measures()) {
          measuredBy.computeIfAbsent(method, id -> new ArrayList<>()).add(sign.id());
        }
      }
    }
  }

  /** What may be asked about the signs a cause shows as. */
  List<Ask> asks(String cause) {
    return asks.getOrDefault(cause, List.of());
  }

  /** The areas of the causes that a sign shows. */
  Set<String> areas(String sign) {
    return areas.getOrDefault(sign, Set.of());
  }

  /** Ids of the signs whose amount is that of a method, in the catalog's order. */
  List<String> measuredBy(AmountMethod method) {
    return measuredBy.getOrDefault(method.id(), List.of());
  }
}
