package easewright.diagnosis;

import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.Replaced;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Which adjustments stand in for which others in one fitting. */
final class Replacements {
  private final Map<String, Set<String>> instead = new TreeMap<>();

  /** Those the rules of a fitting say. */
  Replacements(List<Replaced> replaced) {
    replaced.forEach(one -> put(one.adjustment(), one.other()));
  }

  /** One more: an adjustment in place of another. */
  void put(String adjustment, String other) {
    instead.computeIfAbsent(other, o -> new TreeSet<>()).add(adjustment);
  }

  /** Cures under what stands in for their adjustment, so that no order among rules matters. */
  Map<String, List<Cures>> applied(Map<String, List<Cures>> byAdjustment) {
    Map<String, List<Cures>> all = new LinkedHashMap<>();
    byAdjustment.forEach(
        (id, cures) -> {
          of(id).forEach(other -> all.computeIfAbsent(other, o -> new ArrayList<>()).addAll(cures));
        });
    return all;
  }

  /** What stands in for an adjustment; itself where nothing does. */
  Set<String> of(String adjustment) {
    Set<String> last = new TreeSet<>();
    follow(adjustment, new HashSet<>(), last);
    return last;
  }

  private void follow(String id, Set<String> passed, Set<String> last) {
    if (!instead.containsKey(id)) {
      last.add(id);
    } else if (passed.add(id)) {
      instead.get(id).forEach(next -> follow(next, passed, last));
    }
  }
}
