package easewright.plan;

import easewright.measure.UnitSystem;
import easewright.pattern.Layer;
import easewright.plan.Cloth.Lay;
import easewright.plan.CutPlan.Laid;
import easewright.plan.CutPlan.Purchase;
import easewright.plan.Laying.Lain;
import easewright.rulebook.RuleBookSource;

/** Computes how much of a cloth to buy for a layout, and formats both. */
record Buying(RuleBookSource book, UnitSystem units) {
  private static final double HAIR = 1e-9;

  /** The length to buy, in mm, so that the washed and squared cloth is enough for the layout. */
  double buyMm(Cloth cloth, double layoutMm) {
    double step =
        book.parameter(units == UnitSystem.METRIC ? "shop-step-metric" : "shop-step-imperial");
    return layoutMm == 0 ? 0 : Math.ceil(neededMm(cloth, layoutMm) / step - HAIR) * step;
  }

  private double neededMm(Cloth cloth, double layoutMm) {
    return (layoutMm + book.parameter("uneven-ends")) / (1 - shrinkage(cloth));
  }

  double shrinkage(Cloth cloth) {
    return cloth.shrinkage() == null ? book.parameter("usual-shrinkage") : cloth.shrinkage();
  }

  Purchase purchase(Layer source, Cloth cloth, Lain lain) {
    CutPlan.Amount buy = Texts.sold(buyMm(cloth, lain.lengthMm()), units);
    CutPlan.Amount layout = Texts.amount(lain.lengthMm(), units);
    return new Purchase(
        CutList.wire(source),
        name(source),
        buy,
        layout,
        shrinkage(cloth),
        lain.use(),
        book.wording()
            .say(
                "plan-buy-working",
                "layout",
                layout.text(),
                "ends",
                Texts.amount(book.parameter("uneven-ends"), units).text(),
                "shrinkage",
                Math.round(shrinkage(cloth) * 100),
                "needed",
                Texts.amount(neededMm(cloth, lain.lengthMm()), units).text(),
                "buy",
                buy.text()));
  }

  private String name(Layer layer) {
    return book.wording().say("plan-layer-" + CutList.wire(layer));
  }

  Laid laid(Layer source, Cloth cloth, Lain lain) {
    String stretch = Texts.words(cloth.stretch().name());
    String key = lain.lay() == Lay.FOLDED ? "plan-lay-folded" : "plan-lay-open";
    String says =
        book.wording()
            .say(
                key,
                "layer",
                name(source),
                "stretch",
                book.wording().say("plan-stretch-" + stretch),
                "length",
                Texts.amount(lain.lengthMm(), units).text());
    if (cloth.napOneWay()) {
      boolean turned = lain.pieces().stream().anyMatch(CutPlan.LaidPiece::turned);
      says += " " + book.wording().say(turned ? "plan-nap-turned" : "plan-nap");
    }
    if (cloth.lay() == Lay.FOLDED && lain.lay() == Lay.OPEN) {
      says += " " + book.wording().say("plan-lay-not-folded");
    }
    return new Laid(
        CutList.wire(source),
        name(source),
        Texts.words(lain.lay().name()),
        Texts.amount(cloth.widthMm(), units),
        Texts.amount(lain.layWidthMm(), units),
        Texts.amount(lain.lengthMm(), units),
        lain.use(),
        cloth.napOneWay(),
        stretch,
        says,
        lain.pieces());
  }
}
