package easewright.diagnosis;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The words of rules and catalog that stand for something the computing does. */
public final class RuleWords {
  /** Begins the id of the figure that is the measured amount of a sign. */
  public static final String AMOUNT_OF = "amount-of-";

  /** Every derived number, besides the amounts of signs. */
  public static final Set<String> FIGURES =
      Stream.concat(
              Stream.of(
                  "bust-difference",
                  "band-strain",
                  "band-strain-excess",
                  "bust-strain-excess",
                  "band-shortfall",
                  "cup-shortfall",
                  "band-pressure",
                  "elastic-tension",
                  "best-size-probability",
                  "runner-up-size-probability",
                  "cup-volume",
                  "bust-point-width-excess",
                  "apex-drop",
                  "front-length-shortfall",
                  "stretch-margin-around",
                  "stretch-margin-along",
                  "recovery-margin",
                  "stretch-direction-margin",
                  "width-factor",
                  "allowance-girth-error",
                  "months-since-operation",
                  "number-of-earlier-rounds"),
              Stream.of("main", "lining", "support")
                  .flatMap(
                      role ->
                          Stream.of("-stretch-around", "-stretch-along", "-recovery", "-growth")
                              .map(role::concat)))
          .collect(Collectors.toUnmodifiableSet());

  /** Parameters that rules compare with and the computing uses too. */
  public static final Set<String> SHARED_PARAMETERS =
      Set.of("comfortable-band-pressure", "complaint-band-pressure");

  private RuleWords() {}

  /** How the amount of an adjustment may be found. */
  public static Set<String> methods() {
    return AmountMethods.ALL;
  }
}
