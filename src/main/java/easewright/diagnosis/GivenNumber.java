package easewright.diagnosis;

import easewright.fitting.Sides;
import java.util.function.Predicate;

/** A number that a fitting or its pattern gives. */
enum GivenNumber implements Input {
  BUST(n -> n.fitting().body().bust() != null),
  UNDERBUST(n -> n.fitting().body().underbust() != null),
  BOTH_SIDES(n -> Sides.of(n.fitting()) != null),
  BUST_POINT_WIDTH(n -> n.fitting().body().bustPointWidth() != null),
  SHOULDER_TO_BUST_POINT(n -> n.fitting().body().shoulderToBustPoint() != null),
  SHOULDER_TO_UNDERBUST(n -> n.fitting().body().shoulderToUnderbust() != null),

  /** Finished underband and bust, measured on the toile or else as drafted. */
  UNDERBAND(n -> n.draft().underband().isPresent()),
  FINISHED_BUST(n -> n.draft().bust().isPresent()),
  /** Finished underband, measured on the toile. */
  MEASURED_UNDERBAND(n -> n.fitting().garment().underband() != null),

  /** Finished bust, measured on the toile. */
  MEASURED_BUST(n -> n.fitting().garment().bust() != null),
  /** Finished girths as drafted. */
  DRAFTED_UNDERBAND(n -> n.draft().draftedMm("underband").isPresent()),
  DRAFTED_BUST(n -> n.draft().draftedMm("bust").isPresent()),
  /** The band's cloth as a sheet draws it; a described pattern tells the finished band only. */
  DRAFTED_BAND_CLOTH(
      n -> n.fitting().sheet() != null && n.draft().draftedMm("underband").isPresent()),

  DRAFTED_DIFFERENCE(n -> n.draft().differenceMm().isPresent()),
  DRAFTED_UNDERBUST(n -> n.draft().underbustMm().isPresent()),
  DRAFTED_BUST_POINT_WIDTH(n -> n.draft().bustPointWidthMm().isPresent()),
  DRAFTED_SHOULDER_TO_BUST_POINT(n -> n.draft().shoulderToBustPointMm().isPresent()),
  DRAFTED_SHOULDER_TO_UNDERBUST(n -> n.draft().shoulderToUnderbustMm().isPresent()),

  /** The cloth of the band before its elastic, and a strap, measured; a strap as drafted. */
  BAND_CLOTH(n -> n.fitting().garment().bandCloth() != null),
  MEASURED_STRAP_WIDTH(n -> n.fitting().garment().strapWidth() != null),
  MEASURED_STRAP_LENGTH(n -> n.fitting().garment().strapLength() != null),
  DRAFTED_STRAP_WIDTH(n -> n.draft().draftedMm("strapWidth").isPresent()),
  DRAFTED_STRAP_LENGTH(n -> n.draft().draftedMm("strapLength").isPresent()),

  /** The elastic's test and the length cut. */
  ELASTIC_TEST(n -> n.fitting().elastic() != null && n.fitting().elastic().test() != null),
  ELASTIC_CUT(n -> n.fitting().bandElasticCut() != null),

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
