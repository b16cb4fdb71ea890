package easewright.book;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toMap;

import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Typical pictures of a cause: four of the signs it shows most often in any fitting; where several
 * are equally frequent, every choice of them. Findings are left out, since few people can measure
 * everything.
 */
final class TypicalPictures {
  private static final int SIGNS_IN_A_PICTURE = 4;

  private TypicalPictures() {}

  /** How often each cause shows each sign, 0 to 1; findings and "never" left out. */
  static Map<String, Map<String, Double>> signsOfEveryCause() {
    RuleBookSource source = Consulting.BOOK.source();
    return Consulting.BOOK.always().shows().stream()
        .filter(shows -> source.catalog().signs().containsKey(shows.sign()))
        .filter(shows -> source.parameter(shows.howOften()) > 0)
        .collect(
            groupingBy(
                Shows::cause,
                TreeMap::new,
                toMap(
                    Shows::sign,
                    shows -> source.parameter(shows.howOften()),
                    Math::max,
                    TreeMap::new)));
  }

  /** All choices of the strongest signs, none weaker while a stronger one is left out. */
  static List<List<String>> of(Map<String, Double> signs) {
    List<String> strongestFirst =
        signs.keySet().stream().sorted(Comparator.comparing(signs::get).reversed()).toList();
    if (strongestFirst.size() <= SIGNS_IN_A_PICTURE) {
      return List.of(strongestFirst);
    }
    double weakest = signs.get(strongestFirst.get(SIGNS_IN_A_PICTURE - 1));
    List<String> certain =
        strongestFirst.stream().filter(sign -> signs.get(sign) > weakest).toList();
    List<String> equals =
        strongestFirst.stream().filter(sign -> signs.get(sign) == weakest).toList();
    List<List<String>> pictures = new ArrayList<>();
    choose(certain, equals, 0, pictures);
    return pictures;
  }

  private static void choose(
      List<String> chosen, List<String> from, int next, List<List<String>> into) {
    if (chosen.size() == SIGNS_IN_A_PICTURE) {
      into.add(chosen);
      return;
    }
    for (int i = next; i < from.size(); i++) {
      List<String> more = new ArrayList<>(chosen);
      more.add(from.get(i));
      choose(more, from, i + 1, into);
    }
  }
}
