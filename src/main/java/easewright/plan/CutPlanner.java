package easewright.plan;

import easewright.diagnosis.Answer.MissingNote;
import easewright.diagnosis.Answer.RuleBookStamp;
import easewright.measure.UnitSystem;
import easewright.pattern.Layer;
import easewright.plan.CutPlan.Laid;
import easewright.plan.CutPlan.Purchase;
import easewright.plan.CutPlan.Supply;
import easewright.plan.CutPlan.Understood;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import easewright.size.SizeChart;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Makes cut plans. Stateless. */
public final class CutPlanner {
  private final RuleBookSource book;
  private final Wording wording;
  private final ChangeBook ways;
  private final Sewing sewing;

  public CutPlanner(RuleBookSource book) {
    this.book = book;
    this.wording = book.wording();
    this.ways = new ChangeBook(book.catalog());
    this.sewing = new Sewing(book.catalog().practice().sewing());
  }

  /**
   * Plans what to cut.
   *
   * @throws CannotBeCut if a piece is wider than the cloth it is cut from
   */
  public CutPlan plan(CutRequest request) {
    Laying laying = PlannedCut.laying(book);
    PlannedCut draw = PlannedCut.of(request, book, ways, laying);
    UnitSystem units = request.units();
    boolean recut = !request.accepted().isEmpty() && !request.everything();
    List<Supply> supplies =
        new Supplies(request.sheet().trims(request.choices()), units, wording)
            .list(draw.sizes().finishedMm(), draw.changes(), recut);
    Buying buying = new Buying(book, units);
    List<Purchase> buy = new ArrayList<>();
    List<Laid> layouts = new ArrayList<>();
    draw.lain()
        .forEach(
            (source, lain) -> {
              buy.add(buying.purchase(source, request.cloths().get(source), lain));
              layouts.add(buying.laid(source, request.cloths().get(source), lain));
            });
    CutList list = new CutList(request, draw.pieces(), book.parameter("lining-trim"), wording);
    return new CutPlan(
        new RuleBookStamp(book.version(), book.hash()),
        understood(request, recut),
        cautions(request),
        draw.changes().notes(),
        draw.sizes().blends(units, wording),
        list.layers(),
        buy,
        layouts,
        supplies,
        sewing.needles(isHeavy(request)),
        sewing.stitches(draw.cut(), draw.sizes().finishedMm(), units),
        order(list.order(layouts), request, draw),
        list.bundles(supplies),
        recut ? List.of() : new Comparing(book, ways, laying, request).all(draw),
        missing(request, draw));
  }

  /** The ids of adjustments that a plan can include: all of the catalog's. */
  public Set<String> adjustments() {
    return ways.ids();
  }

  /** Cutting, then sewing; nothing where nothing is cut. */
  private List<String> order(List<String> cutting, CutRequest request, PlannedCut draw) {
    if (cutting.isEmpty()) {
      return cutting;
    }
    List<String> order = new ArrayList<>(cutting);
    Set<String> made = new HashSet<>();
    draw.pieces().forEach(one -> made.add(one.piece().id()));
    order.addAll(
        new SewingOrder(
                draw.cut(),
                request.sheet().trims(request.choices()),
                book.catalog().practice().sewing(),
                wording)
            .steps(made));
    return order;
  }

  private static Understood understood(CutRequest request, boolean recut) {
    return new Understood(
        request.units().name().toLowerCase(Locale.ROOT),
        request.sheet().id(),
        request.sheet().name(),
        request.upperSize(),
        request.lowerSize(),
        new TreeMap<>(request.sheet().decided(request.choices())),
        recut);
  }

  private List<String> cautions(CutRequest request) {
    List<String> cautions = new ArrayList<>();
    boolean tighter =
        request.accepted().stream()
            .map(change -> book.catalog().adjustments().get(change.adjustment()))
            .filter(Objects::nonNull)
            .anyMatch(entry -> entry.tightens());
    if (tighter) {
      cautions.add(wording.say("plan-caution-tighter"));
    }
    farApart(request).ifPresent(cautions::add);
    cautions.add(wording.say("tools-and-blades"));
    return cautions;
  }

  /** The caution of two sizes more than a step apart, whose parts are of two bodies. */
  private Optional<String> farApart(CutRequest request) {
    SizeChart chart = request.sheet().chart();
    long steps =
        chart.bandsApart(
            chart.cell(request.lowerSize()).orElseThrow(),
            chart.cell(request.upperSize()).orElseThrow());
    return steps > 1
        ? Optional.of(wording.say("size-mixed-far", "steps", steps))
        : Optional.empty();
  }

  private boolean isHeavy(CutRequest request) {
    Cloth main = request.cloths().get(Layer.MAIN);
    return main != null
        && main.weight() != null
        && main.weight().gramsPerM2() >= book.parameter("heavy-cloth");
  }

  private List<MissingNote> missing(CutRequest request, PlannedCut draw) {
    List<MissingNote> missing = new ArrayList<>();
    TreeSet<Layer> sources = new TreeSet<>();
    draw.pieces().forEach(one -> sources.add(request.source(one.piece().layer())));
    for (Layer source : sources) {
      String layer = CutList.wire(source);
      Cloth cloth = request.cloths().get(source);
      if (cloth == null) {
        missing.add(note("/cloths/" + layer, "cloth", "layer", layer));
      } else if (cloth.shrinkage() == null) {
        missing.add(
            note(
                "/cloths/" + layer + "/shrinkage",
                "shrinkage",
                "layer",
                layer,
                "percent",
                Math.round(book.parameter("usual-shrinkage") * 100)));
      }
    }
    for (SizedPiece one : draw.pieces()) {
      if (one.box() == null) {
        missing.add(note("/pattern", "box", "piece", one.piece().name()));
      }
    }
    return missing;
  }

  private MissingNote note(String pointer, String what, Object... blanks) {
    return new MissingNote(
        pointer,
        wording.say("plan-missing-" + what, blanks),
        wording.say("plan-missing-" + what + "-change", blanks));
  }
}
