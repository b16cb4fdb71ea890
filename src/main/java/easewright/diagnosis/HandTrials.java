package easewright.diagnosis;

import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.fitting.Trial;
import easewright.rulebook.Catalog;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Signs that are themselves a trial: an edge pinched smooth, a strap lifted, an elastic undone.
 * What the catalog says they prove was held on this body and sat right.
 */
final class HandTrials {
  private static final String SLIGHT = "slight";

  private HandTrials() {}

  /** The trials told as signs; one that helped only slightly proves nothing. */
  static List<Trial> of(Fitting fitting, Catalog catalog) {
    return fitting.signs().stream()
        .filter(sign -> sign.present() && !SLIGHT.equals(sign.degree()))
        .flatMap(sign -> trials(sign, catalog))
        .toList();
  }

  private static Stream<Trial> trials(ReportedSign sign, Catalog catalog) {
    List<String> proves = catalog.signs().get(sign.id()).proves();
    return proves == null
        ? Stream.empty()
        : proves.stream().map(change -> new Trial(change, sign.amount(), "held", "right"));
  }

  /**
   * Ids of the changes that were held and sat right, or lie between what helped and what was too
   * much, told as a sign or as a trial.
   */
  static Set<String> proved(Fitting fitting, Catalog catalog) {
    return Stream.concat(
            TrialSteps.together(fitting, catalog).stream(), of(fitting, catalog).stream())
        .filter(
            one ->
                one.isRight() || TrialSteps.between(one.adjustment(), fitting, catalog).isPresent())
        .map(Trial::adjustment)
        .collect(Collectors.toSet());
  }
}
