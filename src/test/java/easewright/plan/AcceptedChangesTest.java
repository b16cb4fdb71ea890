package easewright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.plan.AcceptedChange.Place;
import easewright.plan.CutPlan.Change;
import easewright.plan.CutPlan.PieceCut;
import easewright.plan.CutPlan.Supply;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.DoubleRange;

@Tag("long")
class AcceptedChangesTest {

  @Provide
  Arbitrary<String> adjustments() {
    return Arbitraries.of(new TreeSet<>(Planned.PLANNER.adjustments()));
  }

  private static Map<String, PieceCut> pieces(CutPlan plan) {
    return plan.cutList().stream()
        .flatMap(layer -> layer.pieces().stream())
        .collect(Collectors.toMap(PieceCut::name, Function.identity()));
  }

  private static CutPlan plan(boolean everything, AcceptedChange... changes) {
    return Planned.PLANNER.plan(Planned.quillmere(List.of(changes), everything));
  }

  @Property(tries = 100)
  void an_accepted_adjustment_changes_only_the_pieces_it_names(
      @ForAll("adjustments") String adjustment, @ForAll @DoubleRange(min = 2, max = 40) double mm) {
    AcceptedChange change = new AcceptedChange(adjustment, mm, List.of());
    CutPlan before = plan(true);
    CutPlan after = plan(true, change);
    Set<String> named = new HashSet<>();
    after.changes().stream().map(Change::piece).forEach(named::add);
    pieces(before)
        .forEach(
            (name, piece) ->
                assertTrue(
                    piece.equals(pieces(after).get(name)) || named.contains(name),
                    () -> adjustment + " changed " + name));
    for (Supply supply : after.supplies()) {
      boolean same = before.supplies().contains(supply);
      assertEquals(same, supply.was() == null, () -> adjustment + ": " + supply);
    }
    for (PieceCut piece : pieces(plan(false, change)).values()) {
      assertTrue(named.contains(piece.name()), () -> adjustment + " recut " + piece.name());
    }
  }

  @Example
  void every_adjustment_of_the_catalog_is_known_to_the_plan_and_no_other() {
    assertEquals(
        new TreeSet<>(Planned.BOOK.catalog().adjustments().keySet()),
        new TreeSet<>(Planned.PLANNER.adjustments()));
  }

  @Example
  void letting_the_band_out_recuts_the_band_wider_and_buys_a_longer_elastic() {
    CutPlan plan =
        plan(
            false,
            new AcceptedChange(
                "let-out-the-band",
                28.0,
                List.of(new Place("underband", "underband-centre-back", 14.0))));
    assertEquals(Set.of("Underband"), pieces(plan).keySet());
    double paper =
        Planned.SHEETS.find("quillmere-top").orElseThrow().pieces().stream()
            .filter(piece -> piece.id().equals("underband"))
            .findFirst()
            .flatMap(piece -> piece.box("75C"))
            .orElseThrow()
            .aroundMm();
    assertEquals(paper + 14, pieces(plan).get("Underband").around().mm(), 1e-9);
    // The sheet cuts this elastic to 95 % of the underband.
    Supply elastic = plan.supplies().get(0);
    assertEquals("underband-elastic", elastic.trim());
    assertEquals(28 * 0.95, elastic.each().mm() - elastic.was().mm(), 1e-9);
    assertEquals(1, plan.supplies().size());
    assertTrue(plan.choices().isEmpty());
  }

  @Example
  void taking_the_band_in_needs_no_new_cloth_and_a_shorter_elastic() {
    CutPlan plan = plan(false, new AcceptedChange("take-in-the-band", 28.0, List.of()));
    assertTrue(plan.cutList().isEmpty());
    assertTrue(plan.layouts().isEmpty());
    assertFalse(plan.changes().stream().anyMatch(Change::newCloth));
    assertEquals(List.of("underband-elastic"), plan.supplies().stream().map(Supply::trim).toList());
    assertTrue(plan.supplies().get(0).each().mm() < plan.supplies().get(0).was().mm());
  }

  @Example
  void shortening_the_band_elastic_changes_no_piece() {
    CutPlan plan = plan(false, new AcceptedChange("shorten-the-band-elastic", 12.0, List.of()));
    assertTrue(plan.cutList().isEmpty());
    Supply elastic = plan.supplies().get(0);
    assertEquals("underband-elastic", elastic.trim());
    assertEquals(-12, elastic.each().mm() - elastic.was().mm(), 1e-9);
  }

  @Example
  void a_longer_front_recuts_the_front_and_what_follows_it_in_every_layer() {
    CutPlan plan = plan(false, new AcceptedChange("lengthen-the-front", 15.0, List.of()));
    assertEquals(
        Set.of(
            "Centre front",
            "Side panel",
            "Centre front lining",
            "Side lining",
            "Centre front support",
            "Side support"),
        pieces(plan).keySet());
    double before = pieces(plan(true)).get("Side panel").along().mm();
    assertEquals(before + 15, pieces(plan).get("Side panel").along().mm(), 1e-9);
  }

  @Example
  void making_it_tighter_is_planned_with_a_caution() {
    String caution = Planned.BOOK.wording().say("plan-caution-tighter");
    AcceptedChange tighter = new AcceptedChange("take-in-the-band", 10.0, List.of());
    AcceptedChange looser = new AcceptedChange("let-out-the-band", 10.0, List.of());
    assertTrue(plan(false, tighter).cautions().contains(caution));
    assertFalse(plan(false, looser).cautions().contains(caution));
  }
}
