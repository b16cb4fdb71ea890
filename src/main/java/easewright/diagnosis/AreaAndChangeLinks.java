package easewright.diagnosis;

import easewright.fitting.EarlierAdjustment;
import easewright.inference.Link;
import easewright.inference.Network;
import easewright.rulebook.Catalog;
import easewright.rulebook.Conclusions;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * How causes bear on what a wearer tells of areas and of changes, beside the signs: whether all is
 * well in an area, and whether a change helped or hurt.
 */
final class AreaAndChangeLinks {
  private AreaAndChangeLinks() {}

  /** What is observed of an area: denied where all is well in it. */
  static String amiss(String area) {
    return "amiss:" + area;
  }

  /** Each cause shows in its area as often as the parameter says, whatever its signs. */
  static List<Link> areas(Catalog catalog, double strength) {
    return catalog.practice().areas().stream()
        .flatMap(
            area ->
                catalog.causes().values().stream()
                    .filter(area::shows)
                    .map(cause -> new Link(cause.id(), amiss(area.id()), strength)))
        .toList();
  }

  /**
   * Where a wearer named the signs that got better, the change helped by way of a cause that it
   * cures and that shows as one of them: its link is weakened by how often the cause shows as the
   * most telling of the signs. This takes it that a sign was there because of one such cause, and
   * that it got better because that cause did. Likewise for signs that got worse, by way of causes
   * that the change worsens.
   *
   * @param tried the last report of each change
   */
  static List<Link> named(
      Collection<EarlierAdjustment> tried, Network network, Conclusions said, Knowledge knowledge) {
    List<Link> links = new ArrayList<>();
    for (EarlierAdjustment one : tried) {
      if (!one.better().isEmpty()) {
        String helped = Knowledge.helped(one.adjustment());
        for (String cause : network.causes()) {
          double strength = network.strength(cause, helped) * shown(cause, one.better(), network);
          addIf(network, cause, helped, strength, links);
        }
      }
      if (!one.worse().isEmpty()) {
        String worse = Knowledge.worse(one.adjustment());
        for (String cause : knowledge.worsened(one.adjustment(), said)) {
          double strength = network.strength(cause, worse) * shown(cause, one.worse(), network);
          addIf(network, cause, worse, strength, links);
        }
      }
    }
    return links;
  }

  private static void addIf(
      Network network, String cause, String sign, double strength, List<Link> links) {
    if (network.strength(cause, sign) > 0) {
      links.add(new Link(cause, sign, strength));
    }
  }

  private static double shown(String cause, List<String> signs, Network network) {
    return signs.stream().mapToDouble(sign -> network.strength(cause, sign)).max().orElse(0);
  }
}
