package easewright.diagnosis;

import easewright.inference.Link;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Brought;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.Conclusions.Worsens;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Turns what rules say of causes into links of the network, with the strengths of the words. */
final class CauseLinks {
  private final Knowledge knowledge;

  CauseLinks(Knowledge knowledge) {
    this.knowledge = knowledge;
  }

  /** Where several rules speak of one link, their middle counts: no order among rules matters. */
  List<Link> of(Collection<Shows> shows) {
    Map<String, Map<String, List<Shows>>> byLink = new HashMap<>();
    for (Shows one : shows) {
      List<Shows> same =
          byLink
              .computeIfAbsent(one.cause(), c -> new HashMap<>())
              .computeIfAbsent(one.sign(), s -> new ArrayList<>(1));
      // A rule that matches twice, as for a sign on the left and on the right, speaks once.
      if (!same.contains(one)) {
        same.add(one);
      }
    }
    List<Link> links = new ArrayList<>();
    byLink.forEach(
        (cause, row) ->
            row.forEach((sign, same) -> links.add(new Link(cause, sign, middle(same)))));
    return links;
  }

  private double middle(List<Shows> shows) {
    return shows.size() == 1
        ? knowledge.parameter(shows.get(0).howOften())
        : shows.stream()
            .mapToDouble(s -> knowledge.parameter(s.howOften()))
            .average()
            .orElseThrow();
  }

  /**
   * An earlier change that helped speaks for what it cures; one that hurt, for what it worsens.
   * What it brought by going too far came with the help, and unseen as harm.
   */
  List<Link> outcomes(Conclusions said) {
    Map<List<String>, Double> strengths = new HashMap<>();
    for (Cures cure : said.cures()) {
      strengths.merge(
          List.of(cure.cause(), Knowledge.helped(cure.adjustment())),
          knowledge.parameter("helped-per-cure") * knowledge.parameter(cure.howMuch()),
          Math::max);
    }
    for (Worsens worsening : said.worsens()) {
      strengths.put(
          List.of(worsening.cause(), Knowledge.worse(worsening.adjustment())),
          knowledge.parameter("worse-where-worsening"));
    }
    for (Brought one : said.brought()) {
      strengths.put(
          List.of(one.cause(), Knowledge.helped(one.adjustment())),
          knowledge.parameter("helped-per-cure"));
      strengths.put(List.of(one.cause(), Knowledge.worse(one.adjustment())), 0.0);
    }
    return strengths.entrySet().stream()
        .map(e -> new Link(e.getKey().get(0), e.getKey().get(1), e.getValue()))
        .toList();
  }
}
