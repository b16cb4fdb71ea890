package easewright.diagnosis;

import java.util.function.Predicate;

/** A number that a fitting or its pattern gives. */
enum GivenNumber implements Input {
  BUST(n -> n.fitting().body().bust() != null),
  UNDERBUST(n -> n.fitting().body().underbust() != null),
  BUST_POINT_WIDTH(n -> n.fitting().body().bustPointWidth() != null),
  SHOULDER_TO_BUST_POINT(n -> n.fitting().body().shoulderToBustPoint() != null),
  SHOULDER_TO_UNDERBUST(n -> n.fitting().body().shoulderToUnderbust() != null),

  /** Finished underband and bust, measured on the toile or else as drafted. */
  UNDERBAND(n -> n.draft().underband().isPresent()),
  FINISHED_BUST(n -> n.draft().bust().isPresent()),
  /** Finished underband, measured on the toile. */
  MEASURED_UNDERBAND(n -> n.fitting().garment().underband() != null),

  DRAFTED_DIFFERENCE(n -> n.draft().differenceMm().isPresent()),
  DRAFTED_UNDERBUST(n -> n.draft().underbustMm().isPresent()),
  DRAFTED_BAND_STRAIN(n -> n.draft().bandStrain().isPresent()),
  DRAFTED_BUST_STRAIN(n -> n.draft().bustStrain().isPresent()),
  DRAFTED_BUST_POINT_WIDTH(n -> n.draft().bustPointWidthMm().isPresent()),
  DRAFTED_SHOULDER_TO_BUST_POINT(n -> n.draft().shoulderToBustPointMm().isPresent()),
  DRAFTED_SHOULDER_TO_UNDERBUST(n -> n.draft().shoulderToUnderbustMm().isPresent()),

  /** The elastic's test and the length cut. */
  ELASTIC_TEST(n -> n.fitting().elastic() != null && n.fitting().elastic().test() != null),
  ELASTIC_CUT(n -> n.fitting().elastic() != null && n.fitting().elastic().cut() != null),

  ALLOWANCE_SEWN(n -> n.fitting().making().seamAllowanceSewn() != null),
  /** As said, or as the pattern has it. */
  ALLOWANCE_PLANNED(
      n ->
          n.fitting().making().seamAllowancePlanned() != null
              || n.draft().seamAllowanceMm().isPresent()),
  SEAMS(n -> n.fitting().making().seams() != null || n.draft().seamsAround().isPresent()),

  SIZE(n -> n.sizes() != null && !n.sizes().chances().isEmpty()),
  NEXT_SIZE(n -> n.sizes() != null && n.sizes().chances().size() > 1),
  MONTHS_SINCE_OPERATION(n -> n.fitting().circumstances().monthsSinceOperation() != null);

  private final Predicate<FittingNumbers> given;

  GivenNumber(Predicate<FittingNumbers> given) {
    this.given = given;
  }

  @Override
  public boolean isGiven(FittingNumbers numbers) {
    return given.test(numbers);
  }
}
