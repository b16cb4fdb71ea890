package easewright.diagnosis;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toCollection;

import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.Replaced;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Which adjustments stand in for which others, as the rules of a fitting say. */
record Replacements(List<Replaced> replaced) {

  /** Cures under what stands in for their adjustment, so that no order among rules matters. */
  Map<String, List<Cures>> applied(Map<String, List<Cures>> byAdjustment) {
    Map<String, Set<String>> instead =
        replaced.stream()
            .collect(
                groupingBy(
                    Replaced::other, mapping(Replaced::adjustment, toCollection(TreeSet::new))));
    Map<String, List<Cures>> all = new LinkedHashMap<>();
    byAdjustment.forEach(
        (id, cures) -> {
          Set<String> last = new TreeSet<>();
          follow(id, instead, new HashSet<>(), last);
          last.forEach(other -> all.computeIfAbsent(other, o -> new ArrayList<>()).addAll(cures));
        });
    return all;
  }

  private static void follow(
      String id, Map<String, Set<String>> instead, Set<String> passed, Set<String> last) {
    if (!instead.containsKey(id)) {
      last.add(id);
    } else if (passed.add(id)) {
      instead.get(id).forEach(next -> follow(next, instead, passed, last));
    }
  }
}
