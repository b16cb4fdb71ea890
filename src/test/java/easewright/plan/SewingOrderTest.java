package easewright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import easewright.measure.UnitSystem;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.pattern.Trim;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What to sew first, on the shipped sheets under every choice, and on a shop's smallest sheet. */
class SewingOrderTest {
  private static final PatternSheets SHEETS = Planned.SHEETS;
  private static final List<AcceptedChange.Place> AT_CENTRE_BACK =
      List.of(new AcceptedChange.Place("underband", "underband-centre-back", 14.0));

  /** A sheet and the options taken. */
  record Way(PatternSheet sheet, Map<String, String> choices) {
    @Override
    public String toString() {
      return sheet.id() + " " + choices;
    }

    CutRequest request(List<AcceptedChange> accepted) {
      String size = sheet.sizes().get(0).name();
      return new CutRequest(
          UnitSystem.METRIC, sheet, size, size, choices, Map.of(), Map.of(), accepted, false);
    }

    List<String> sewing() {
      return sewing(Planned.PLANNER.plan(request(List.of())));
    }

    /** The steps after the cutting, which ends with the bundles. */
    static List<String> sewing(CutPlan plan) {
      int bundles = plan.order().indexOf(Planned.BOOK.wording().say("plan-order-bundle"));
      return plan.order().subList(bundles + 1, plan.order().size());
    }
  }

  static List<Way> ways() throws IOException {
    List<Way> ways = new ArrayList<>();
    Path small = Path.of("openapi/examples/small-sheet.yaml");
    for (PatternSheet sheet :
        Stream.concat(
                SHEETS.shipped().stream(), Stream.of(SHEETS.readYaml(Files.readString(small))))
            .toList()) {
      Planned.ways(sheet).forEach(taken -> ways.add(new Way(sheet, taken)));
    }
    return ways;
  }

  private static Way way(String sheet, String choices) {
    Map<String, String> taken = new HashMap<>();
    for (String one : choices == null ? new String[0] : choices.split(" ")) {
      taken.put(one.split("=")[0], one.split("=")[1]);
    }
    return new Way(SHEETS.find(sheet).orElseThrow(), taken);
  }

  private static int step(List<String> steps, String... words) {
    for (int i = 0; i < steps.size(); i++) {
      if (Stream.of(words).allMatch(steps.get(i)::contains)) {
        return i;
      }
    }
    throw new AssertionError("No step tells of " + List.of(words) + ": " + steps);
  }

  // Common practice in sewing stretch tops: inner layers are held to their pieces first, parts are
  // shaped while flat, sides are closed before the band goes on round, and the band is a ring by
  // then; elastic covers finished seams, fasteners the ends of the elastic.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "",
      value = {
        "quillmere-top | | Lay Centre front support and Centre front lining | Sew the shaped seam",
        "quillmere-top | | Sew the shaped seam | Sew the shoulder seam",
        "quillmere-top | | Make the straps | Sew the shoulder seam",
        "quillmere-top | | Sew the shoulder seam | Sew the strap end",
        "quillmere-top | | Sew the shaped seam | Sew the underband seam",
        "quillmere-top | | Sew the side seam | Sew the underband seam",
        "quillmere-top | | Sew the underband centre back | Sew the underband seam",
        "quillmere-top | | Sew the side seam | for the armholes",
        "quillmere-top | | Sew the underband seam | Draw Soft brushed underband elastic",
        "quillmere-top | closure=hooks | Draw Soft brushed underband elastic | Sew Hook and eye tape",
        "quillmere-top | straps=sliders | Finish the strap sides | Sew the shoulder seam",
        "ossenby-pull-on | | Finish the edges of Key pocket | Sew the side seam",
        "ossenby-pull-on | | Sew the shoulder seam | Sew the side seam",
        "ossenby-pull-on | | Sew the side seam | Sew the lower edge",
        "ossenby-pull-on | | Sew the strip end | Sew the lower edge",
        "ossenby-pull-on | | Sew the lower edge | Finish the lower edge of Casing strip",
        "ossenby-pull-on | | Finish the lower edge of Casing strip | Draw Firm knitted elastic",
        "ossenby-pull-on | hem=on-show | Sew the side seam | Sew Soft wide elastic",
        "larkhythe-soft-top | | Sew the shaped seam | Sew the shoulder seam",
        "larkhythe-soft-top | | Sew the side seam | Sew the underband seam",
        "larkhythe-soft-top | | Sew the underband side seam | Sew the underband seam",
        "larkhythe-soft-top | | Sew Soft narrow elastic for the neckline | Sew Snap tape",
        "larkhythe-soft-top | extras=lining+pad-pockets | Finish the edges of Pad pocket | Sew the shaped seam"
      })
  void what_lies_flat_comes_first_and_no_seam_is_shut_off(
      String sheet, String choices, String first, String then) {
    List<String> steps = way(sheet, choices).sewing();
    assertTrue(step(steps, first) < step(steps, then), steps::toString);
  }

  @ParameterizedTest
  @MethodSource("ways")
  void every_piece_is_sewn_every_trim_once_and_elastic_over_finished_seams(Way way) {
    List<String> steps = way.sewing();
    String all = String.join("\n", steps);
    way.sheet()
        .cut(way.choices())
        .pieces()
        .forEach(
            piece -> assertTrue(all.contains(piece.name()), () -> piece.name() + " in\n" + all));
    int lastSeam = -1;
    for (int i = 0; i < steps.size(); i++) {
      lastSeam = steps.get(i).contains("right sides together") ? i : lastSeam;
    }
    for (Trim trim : way.sheet().trims(way.choices())) {
      List<String> told = steps.stream().filter(one -> names(one, trim)).toList();
      assertEquals(1, told.size(), () -> trim.name() + " in\n" + all);
      boolean early = trim.kind().equals("strap") || told.get(0).contains("Catch");
      assertTrue(early || steps.indexOf(told.get(0)) > lastSeam, () -> trim.name() + " in\n" + all);
    }
  }

  /** One trim's name may begin another's. */
  private static boolean names(String step, Trim trim) {
    return step.matches(
        "(?s).*\\b" + Pattern.quote(trim.name()) + "( (to|into|in)\\b|[.,]| and .*).*");
  }

  /** The corners of a piece are not known then, so the order may be worse, but nothing is lost. */
  @ParameterizedTest
  @ValueSource(strings = {"quillmere-top", "ossenby-pull-on", "larkhythe-soft-top"})
  void a_sheet_that_does_not_go_round_its_pieces_loses_no_step(String id) throws IOException {
    List<String> usual = way(id, null).sewing();
    for (int seed = 0; seed < 40; seed++) {
      JsonNode json = new ObjectMapper().readTree(SHEETS.listed(id).orElseThrow().json());
      for (JsonNode piece : json.path("pieces")) {
        if (piece.path("edges") instanceof ArrayNode edges) {
          List<JsonNode> shuffled = new ArrayList<>();
          edges.forEach(shuffled::add);
          Collections.shuffle(shuffled, new Random(seed));
          edges.removeAll().addAll(shuffled);
        }
      }
      List<String> steps = new Way(SHEETS.read(json), Map.of()).sewing();
      assertEquals(usual.size(), steps.size(), steps::toString);
      assertEquals(seams(usual), seams(steps));
    }
  }

  private static Set<String> seams(List<String> steps) {
    return steps.stream()
        .filter(one -> one.contains("right sides together"))
        .map(one -> one.substring(0, one.indexOf(',')))
        .collect(Collectors.toSet());
  }

  @Test
  void a_seam_of_several_edges_is_one_step_that_names_them_all() {
    List<String> steps = way("quillmere-top", null).sewing();
    assertEquals(
        "Sew the underband seam, right sides together: Underband to Centre front, Side panel and"
            + " Rounded back. Match the notches.",
        steps.get(step(steps, "Sew the underband seam")));
    List<String> soft = way("larkhythe-soft-top", null).sewing();
    assertTrue(
        soft.get(step(soft, "Sew the underband seam"))
            .contains("Lower front to Front underband; Scooped back to Back underband"),
        soft::toString);
    List<String> shoulders = way("ossenby-pull-on", null).sewing();
    assertTrue(
        shoulders
            .get(step(shoulders, "Sew the shoulder seam"))
            .contains("Catch 2 × Stay tape for the shoulders in it."),
        shoulders::toString);
  }

  @Test
  void trims_without_a_place_go_to_the_edges_they_are_measured_by() throws IOException {
    Way small =
        ways().stream()
            .filter(way -> way.sheet().id().equals("wickenfell-top"))
            .findFirst()
            .orElseThrow();
    List<String> steps = small.sewing();
    assertTrue(
        step(steps, "Narrow elastic for the neckline to the neckline of Front and Back") > 0);
    assertTrue(step(steps, "armholes to the armhole of Front and Back") > 0);
  }

  @Test
  void after_a_fitting_only_what_touches_the_new_pieces_is_sewn() {
    Way way = way("quillmere-top", null);
    CutPlan plan =
        Planned.PLANNER.plan(
            way.request(List.of(new AcceptedChange("let-out-the-band", 28.0, AT_CENTRE_BACK))));
    List<String> steps = Way.sewing(plan);
    assertTrue(steps.get(0).startsWith("Take the old pieces out"), steps::toString);
    assertTrue(
        steps.get(0).endsWith("then the underband seam and underband centre back."), steps.get(0));
    assertTrue(
        step(steps, "Sew the underband seam") > step(steps, "Sew the underband centre back"));
    assertTrue(steps.stream().noneMatch(one -> one.contains("side seam")), steps::toString);
    assertTrue(steps.stream().noneMatch(one -> one.contains("armhole")), steps::toString);
  }
}
