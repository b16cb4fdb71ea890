package easewright.diagnosis;

import java.util.Arrays;
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
              Stream.concat(
                  Arrays.stream(DerivedFigure.values()).map(DerivedFigure::id),
                  EdgeFigure.all().stream().map(EdgeFigure.OfEdge::id)),
              LayerFigure.ROLES.stream()
                  .flatMap(
                      role ->
                          Arrays.stream(LayerFigure.values()).map(figure -> figure.of(role).id())))
          .collect(Collectors.toUnmodifiableSet());

  /** Parameters that rules compare with and the computing uses too. */
  public static final Set<String> SHARED_PARAMETERS =
      Set.of(
          "comfortable-band-pressure",
          "complaint-band-pressure",
          "beyond-the-band-size",
          "elastic-cut-short",
          "elastic-cut-long",
          "edge-grown");

  private RuleWords() {}

  /** How the amount of an adjustment may be found. */
  public static Set<String> methods() {
    return Arrays.stream(AmountMethod.values())
        .map(AmountMethod::id)
        .collect(Collectors.toUnmodifiableSet());
  }
}
