package easewright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.Grain;
import easewright.pattern.Layer;
import easewright.pattern.PatternSheet;
import easewright.pattern.Piece;
import easewright.pattern.StretchDirection;
import easewright.plan.Cloth.GreatestStretch;
import easewright.plan.CutPlan.Laid;
import easewright.plan.CutPlan.LaidPiece;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;

/** Properties of every shipped pattern, size, choice and cloth. */
@Tag("long")
class CutPlanPropertiesTest {
  private static final double NEAR = 1e-6;

  @Provide
  Arbitrary<CutRequest> requests() {
    Arbitrary<Cloth> cloths =
        Combinators.combine(
                Arbitraries.doubles().between(1300, 1700).ofScale(0),
                Arbitraries.of(Cloth.Lay.class),
                Arbitraries.of(true, false),
                Arbitraries.of(GreatestStretch.class),
                Arbitraries.doubles().between(0, 0.15).ofScale(2))
            .as((width, lay, nap, way, loss) -> new Cloth(width, lay, nap, way, loss, null));
    return Arbitraries.of(Planned.SHEETS.shipped())
        .flatMap(
            sheet ->
                Combinators.combine(
                        Arbitraries.of(sheet.sizes()), Arbitraries.of(Planned.ways(sheet)), cloths)
                    .as(
                        (size, way, cloth) ->
                            Planned.request(sheet, size.name(), way, cloth, List.of(), true)));
  }

  @Property(tries = 60)
  void all_pieces_are_laid_inside_the_cloth_without_overlap(
      @ForAll("requests") CutRequest request) {
    CutPlan plan = Planned.PLANNER.plan(request);
    for (Laid laid : plan.layouts()) {
      for (LaidPiece one : laid.pieces()) {
        assertTrue(one.x() >= -NEAR && one.y() >= -NEAR, one::toString);
        assertTrue(one.x() + one.width() <= laid.layWidth().mm() + NEAR, one::toString);
        assertTrue(one.y() + one.length() <= laid.length().mm() + NEAR, one::toString);
        for (LaidPiece other : laid.pieces()) {
          assertTrue(one == other || !overlap(one, other), () -> one + " lies on " + other);
        }
      }
    }
    for (Piece piece : request.sheet().cut(request.choices()).pieces()) {
      int cloth =
          plan.layouts().stream()
              .flatMap(laid -> laid.pieces().stream())
              .filter(one -> one.piece().equals(piece.id()))
              .mapToInt(one -> one.onFold() ? 1 : one.layers())
              .sum();
      assertEquals(piece.count(), cloth, piece.id());
    }
  }

  private static boolean overlap(LaidPiece a, LaidPiece b) {
    return Math.min(a.x() + a.width(), b.x() + b.width()) - Math.max(a.x(), b.x()) > NEAR
        && Math.min(a.y() + a.length(), b.y() + b.length()) - Math.max(a.y(), b.y()) > NEAR;
  }

  @Property(tries = 60)
  void stretch_and_nap_keep_their_direction_and_halves_touch_the_fold(
      @ForAll("requests") CutRequest request) {
    Cloth cloth = request.cloths().get(Layer.MAIN);
    for (Laid laid : Planned.PLANNER.plan(request).layouts()) {
      for (LaidPiece one : laid.pieces()) {
        Piece piece =
            request.sheet().pieces().stream()
                .filter(p -> p.id().equals(one.piece()))
                .findFirst()
                .orElseThrow();
        boolean even = cloth.stretch() == GreatestStretch.BOTH || piece.grain() == Grain.ANY;
        boolean acrossTheCloth = piece.stretch() == StretchDirection.AROUND != one.turned();
        if (!even) {
          assertEquals(cloth.stretch() == GreatestStretch.CROSSWISE, acrossTheCloth, one::toString);
        } else if (cloth.napOneWay() && cloth.stretch() == GreatestStretch.BOTH) {
          assertEquals(piece.grain() == Grain.AROUND, one.turned(), one::toString);
        }
        Piece.Box box = piece.box(request.upperSize()).orElseThrow();
        double across = one.turned() ? box.alongMm() : box.aroundMm();
        assertEquals(
            one.opened() ? box.aroundMm() * 2 : across,
            one.opened() && one.turned() ? one.length() : one.width(),
            NEAR);
        boolean folded = laid.laid().equals("folded");
        assertEquals(folded && piece.onFold(), one.onFold());
        assertEquals(!folded && piece.onFold(), one.opened());
        assertTrue(!one.onFold() || one.x() == 0, one::toString);
      }
    }
  }

  @Property(tries = 60)
  void what_is_bought_holds_the_layout_after_the_wash_in_steps_of_ten_centimetres(
      @ForAll("requests") CutRequest request) {
    CutPlan plan = Planned.PLANNER.plan(request);
    assertEquals(plan.layouts().size(), plan.buy().size());
    for (CutPlan.Purchase one : plan.buy()) {
      assertTrue(one.buy().mm() * (1 - one.shrinkage()) >= one.layout().mm(), one::toString);
      assertEquals(0, one.buy().mm() % 100, NEAR);
      assertTrue(one.use() > 0 && one.use() <= 1 + NEAR, one::toString);
    }
  }

  @Property(tries = 30)
  void the_order_of_pieces_in_the_sheet_does_not_matter(
      @ForAll("requests") CutRequest request, @ForAll long shuffle) {
    CutPlan plan = Planned.PLANNER.plan(request);
    CutPlan shuffled = Planned.PLANNER.plan(shuffled(request, shuffle));
    assertEquals(plan.layouts(), shuffled.layouts());
    assertEquals(plan.buy(), shuffled.buy());
    assertEquals(plan.supplies(), shuffled.supplies());
    assertEquals(plan.stitches(), shuffled.stitches());
  }

  private static CutRequest shuffled(CutRequest request, long shuffle) {
    PatternSheet s = request.sheet();
    List<Piece> pieces = new ArrayList<>(s.pieces());
    Collections.shuffle(pieces, new Random(shuffle));
    PatternSheet other =
        new PatternSheet(
            s.id(),
            s.name(),
            s.family(),
            s.summary(),
            s.construction(),
            s.constructionType(),
            s.supportClass(),
            s.seamAllowanceMm(),
            s.sizes(),
            s.choices(),
            pieces,
            s.cloth(),
            s.trims());
    return Planned.request(
        other,
        request.upperSize(),
        request.choices(),
        request.cloths().get(Layer.MAIN),
        List.of(),
        true);
  }

  @Example
  void no_choice_leaves_a_piece_with_nothing_to_be_sewn_to_or_a_supply_without_its_place() {
    List<String> dangling = new ArrayList<>();
    for (PatternSheet sheet : Planned.SHEETS.shipped()) {
      List<Map<String, String>> ways = Planned.ways(sheet);
      assertFalse(ways.isEmpty());
      for (Map<String, String> way : ways) {
        var cut = sheet.cut(way);
        for (Piece piece : cut.pieces()) {
          piece
              .follows()
              .filter(main -> cut.piece(main).isEmpty())
              .ifPresent(main -> dangling.add(way + ": " + piece.id() + " follows " + main));
          piece.edges().stream()
              .filter(edge -> !edge.sewnTo().isEmpty() && edge.finish().isEmpty())
              .filter(edge -> cut.partners(edge).isEmpty())
              .forEach(edge -> dangling.add(way + ": " + piece.id() + "/" + edge.id()));
        }
        for (CutPlan.Supply supply : planned(sheet, way).supplies()) {
          boolean placed =
              supply.sewnTo().isEmpty()
                  || sheet.trims().stream()
                      .filter(trim -> trim.id().equals(supply.trim()))
                      .flatMap(trim -> trim.places().stream())
                      .anyMatch(
                          ref ->
                              cut.piece(ref.piece())
                                  .filter(piece -> piece.carries(ref.edge()))
                                  .isPresent());
          if (!placed) {
            dangling.add(way + ": " + supply.trim());
          }
        }
      }
    }
    assertEquals(List.of(), dangling);
  }

  private static CutPlan planned(PatternSheet sheet, Map<String, String> way) {
    CutRequest whole =
        Planned.request(sheet, sheet.sizes().get(0).name(), way, Planned.WIDE, List.of(), true);
    return Planned.PLANNER.plan(
        new CutRequest(
            whole.units(),
            sheet,
            whole.upperSize(),
            whole.lowerSize(),
            way,
            Map.of(),
            Map.of(),
            List.of(),
            true));
  }
}
