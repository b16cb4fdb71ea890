package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.fitting.Fitting;
import easewright.measure.Quantity;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.SignEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import org.junit.jupiter.api.Test;

/**
 * Nothing is made tighter where something may be wrong with the body. Why: a tight bra contributes
 * to blocked ducts (Mitchell et al. 2022, Breastfeed Med 17:360), a tight band hinders breath (Kipp
 * et al. 2024, Med Sci Sports Exerc 56:1168); after an operation the care team decides (Breast
 * Cancer Care, Breast prostheses, bras and clothes after surgery).
 */
class NoTighteningTest {
  private static final Map<String, AdjustmentEntry> ADJUSTMENTS =
      Answering.BOOK.catalog().adjustments();
  private static final Set<String> RED_FLAGS =
      Answering.BOOK.catalog().signs().values().stream()
          .filter(SignEntry::redFlag)
          .map(SignEntry::id)
          .collect(Collectors.toSet());

  private static final Set<String> SLACK =
      Set.of(
          "straps-slack-at-their-shortest",
          "straps-slip-off",
          "band-rides-up-at-the-back",
          "band-pulls-off-the-body",
          "horizontal-folds-across-the-back");

  /** Circumstances under which nothing at all is taken in or made firmer. */
  private static final List<String> NOTHING =
      List.of(
          "operatedRecently",
          "lymphoedemaOrNodesRemoved",
          "radiotherapy",
          "chemotherapy",
          "portOrPacemaker",
          "shingles",
          "hurtRibs",
          "prosthesisOrPocket");

  /** Circumstances under which slack may be taken up, down to the body and no further. */
  private static final List<String> SLACK_ONLY =
      List.of("nursing", "pregnant", "implantOrExpander", "sleepingInIt", "growing");

  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void before_a_danger_nothing_is_changed(@ForAll("redFlagged") ObjectNode given) {
    Answer answer = Answering.answer(given);
    assertEquals(List.of(), answer.adjustments());
    assertNull(answer.trial());
    assertFalse(answer.afterwards() != null && answer.afterwards().tightens());
    assertEquals("stop", answer.cautions().get(0).urgency());
  }

  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void in_a_circumstance_that_forbids_it_nothing_marked_as_tightening_is_offered(
      @ForAll("inCare") ObjectNode given) {
    Answer answer = Answering.answer(given);
    for (AdjustmentNote offered : answer.adjustments()) {
      assertFalse(ADJUSTMENTS.get(offered.id()).tightens(), offered.id());
    }
    assertNoTighterTrial(answer);
  }

  @Property(tries = 1500, shrinking = ShrinkingMode.BOUNDED)
  void where_slack_may_go_it_goes_down_to_the_body_and_no_further(
      @ForAll("besideSlack") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    Answer answer = Answering.DIAGNOSIS.answer(fitting);
    assertNothingTightens(answer);
    for (AdjustmentNote offered : answer.adjustments()) {
      if (offered.slackOnly()) {
        double taken = Quantity.parse(offered.amount().text()).length().mm();
        assertTrue(taken > 0 && taken <= loose(fitting, offered) + ROUNDING_MM, offered.does());
        assertTrue(offered.does().contains("slack only"), offered.does());
      }
    }
  }

  /** Halves of a millimetre or of an eighth of an inch, as an amount told is shown. */
  private static final double ROUNDING_MM = 1.6;

  private static double loose(Fitting fitting, AdjustmentNote offered) {
    if (offered.id().equals("take-in-the-band")) {
      double body = fitting.body().underbust().value().mm();
      return fitting.garment().underband().mm() - body - ROUNDING_MM;
    }
    return fitting.signs().stream()
        .filter(sign -> sign.amount() != null)
        .filter(sign -> Answering.BOOK.catalog().signs().get(sign.id()).slack())
        .mapToDouble(sign -> sign.amount().mm())
        .max()
        .orElse(0);
  }

  /** Whatever rule says so, for whatever reason. */
  @Property(tries = 2000, shrinking = ShrinkingMode.BOUNDED)
  void where_a_rule_advises_no_tightening_none_is_offered(@ForAll("fittings") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    Answer answer = Answering.DIAGNOSIS.answer(fitting);
    if (!Answering.consult(Answering.facts(fitting)).noTightening().isEmpty()) {
      assertNothingTightens(answer);
    }
    List<String> urgencies = answer.cautions().stream().map(CautionNote::urgency).toList();
    assertTrue(
        urgencies.subList(0, urgencies.lastIndexOf("stop") + 1).stream().allMatch("stop"::equals),
        urgencies.toString());
  }

  private static void assertNothingTightens(Answer answer) {
    for (AdjustmentNote offered : answer.adjustments()) {
      assertFalse(offered.tightens(), offered.id());
      assertTrue(
          !ADJUSTMENTS.get(offered.id()).tightens() || offered.slackOnly(),
          () -> offered.id() + " tightens");
    }
    assertNoTighterTrial(answer);
  }

  /** A trial is advice too: pinned closer for ten minutes is closer. */
  private static void assertNoTighterTrial(Answer answer) {
    if (answer.trial() != null) {
      assertFalse(answer.trial().tightens(), answer.trial().id());
      assertFalse(ADJUSTMENTS.get(answer.trial().id()).tightens(), answer.trial().id());
    }
  }

  /** Whatever else was told; so a red flag leaves nothing that could be passed on beside it. */
  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void beside_a_red_flag_nothing_is_said_of_the_fit(@ForAll("redFlagged") ObjectNode given) {
    Answer answer = Answering.answer(given);
    assertTrue(answer.isDanger());
    CautionNote first = answer.cautions().get(0);
    assertTrue(
        Stream.of(first.doNow(), first.who(), first.howSoon(), first.after())
            .noneMatch(String::isBlank));
    assertFalse(answer.notNow().isBlank());
    assertNull(answer.size());
    assertNull(answer.nothingWrong());
    assertFalse(answer.clear());
    for (List<?> part :
        List.of(
            answer.cloth(),
            answer.findings(),
            answer.causes(),
            answer.adjustments(),
            answer.heldBack(),
            answer.questions(),
            answer.unexplained(),
            answer.whyNot(),
            answer.missing(),
            answer.measureAgain())) {
      assertEquals(List.of(), part);
    }
    List<Integer> soon =
        answer.cautions().stream()
            .filter(CautionNote::isDanger)
            .map(one -> Answering.BOOK.catalog().practice().order().soon().indexOf(one.soon()))
            .toList();
    assertEquals(soon.stream().sorted().toList(), soon, "the most urgent comes first");
  }

  /** Common practice: raw skin heals first, then the edge that rubbed it raw is lowered. */
  @Test
  void once_a_danger_from_the_fit_has_passed_only_room_is_made() throws Exception {
    String rubs =
        """
        {"signs": [{"sign": "%s"}, {"sign": "armhole-cuts-or-chafes"},
         {"sign": "armhole-edge-sits-in-the-underarm-crease"}]}""";
    ObjectMapper json = new ObjectMapper();
    Answer raw = Answering.answer(json.readTree(rubs.formatted("broken-skin-or-rash")));
    assertEquals("lower-the-armhole", raw.afterwards().id());
    assertTrue(raw.isDanger());
    Answer infected =
        Answering.answer(json.readTree(rubs.formatted("spreading-redness-or-infected-skin")));
    assertNull(infected.afterwards());
    Answer loose =
        Answering.answer(
            json.readTree(
                """
                {"signs": [{"sign": "breathless-or-dizzy"}, {"sign": "band-rides-up-at-the-back"},
                 {"sign": "band-pulls-off-the-body", "amount": "3 cm"}]}"""));
    assertNull(loose.afterwards());
  }

  @Test
  void every_red_flag_raises_a_caution_to_stop_that_stops_tightening() {
    List<String> silent = new ArrayList<>();
    for (String flag : RED_FLAGS) {
      ObjectNode given = JsonNodeFactory.instance.objectNode();
      given.putArray("signs").addObject().put("sign", flag);
      boolean raised =
          Answering.answer(given).cautions().stream()
              .anyMatch(c -> c.stopsTightening() && c.urgency().equals("stop"));
      if (!raised) {
        silent.add(flag);
      }
    }
    assertEquals(List.of(), silent);
    assertTrue(RED_FLAGS.size() >= 25, "the catalog has lost red flags: " + RED_FLAGS);
  }

  /** What the cut plan takes away or shortens is closer; so is what may be felt as tight after. */
  private static final Set<String> FELT_AS_TIGHT =
      Set.of(
          "band-digs-in",
          "band-marks-last",
          "breathing-feels-hard",
          "breasts-pressed-flat-or-together",
          "no-finger-passes-under-the-strap",
          "strain-lines-across-the-bust",
          "straps-dig-in",
          "tight-everywhere");

  @Test
  void every_adjustment_that_takes_away_or_may_be_felt_as_tight_is_marked() {
    Set<String> closer = new TreeSet<>();
    ADJUSTMENTS.values().stream()
        .filter(entry -> Set.of("take", "shorter").contains(entry.cut().way()))
        .forEach(entry -> closer.add(entry.id()));
    assertTrue(closer.size() > 6, closer.toString());
    ADJUSTMENTS.values().stream()
        .filter(entry -> entry.sideEffects() != null)
        .filter(entry -> entry.sideEffects().stream().anyMatch(FELT_AS_TIGHT::contains))
        .forEach(entry -> closer.add(entry.id()));
    assertEquals(List.of(), closer.stream().filter(id -> !ADJUSTMENTS.get(id).tightens()).toList());
  }

  /** Words in an adjustment that make one look whether it tightens. */
  private static final Pattern SMALLER =
      Pattern.compile(
          "\\b(tak(e|es|ing) (in|out|from)|take \\{amount\\}|take the (seams|spare)|shorten|shorter"
              + "|tight|smaller|narrower|firmer|firm|next size down|sister size|fold \\{amount\\} out"
              + "|more hold|more support|double|wedge|wider of|flatter|less room|closer)");

  /** Reviewed: these make something closer, firmer or smaller, whatever they are called. */
  private static final Set<String> REVIEWED_TIGHTENING =
      Set.of(
          "take-in-the-band",
          "shorten-the-band-elastic",
          "replace-the-band-elastic",
          "shape-the-band",
          "choose-a-firmer-cloth",
          "add-a-support-layer",
          "double-the-support-layer",
          "choose-more-support",
          "take-from-the-shaped-seam",
          "take-room-from-above",
          "flatten-the-shaped-seam",
          "cut-the-sides-separately",
          "wedge-out-of-the-neckline",
          "stay-the-neckline-with-elastic",
          "wedge-out-of-the-front-armhole",
          "wedge-out-of-the-upper-back",
          "shorten-the-back",
          "shorten-the-front",
          "narrow-the-back",
          "take-the-seams-to-the-planned-allowance",
          "bring-it-to-its-drafted-measurements",
          "ease-the-edge-back-to-its-draft",
          "recut-the-edge-elastic",
          "cut-the-next-size-down",
          "cut-the-sister-size",
          "set-the-straps-shorter",
          "shorten-the-straps",
          "cross-the-straps",
          "firmer-strap-material",
          "sew-the-sides-alike",
          "recut-from-one-size",
          "cut-the-smaller-size-measured");

  /** Reviewed: they speak of something smaller or firmer, and leave the garment no tighter. */
  private static final Map<String, String> REVIEWED_NOT_TIGHTENING =
      Map.of(
          "add-a-closure", "it adds an opening, fastened where it is loosest",
          "deepen-the-shaped-seam", "cloth is added at the fullest point and none taken off",
          "trim-the-lining", "only the enclosed edge of the lining is cut back",
          "measure-again", "the tape is not pulled tight",
          "change-the-inserts", "the insert is smaller than the cup it lies in",
          "leave-room-for-the-fuller-days", "it is cut for the fullest time, without a firm layer",
          "let-it-out-to-its-drafted-measurements", "only what came out small is let out",
          "cut-the-larger-sister-size", "the band is longer and the cup holds the same");

  @Test
  void every_adjustment_that_makes_the_garment_closer_is_marked_so() {
    List<String> wrong = new ArrayList<>();
    for (String id : REVIEWED_TIGHTENING) {
      if (!ADJUSTMENTS.containsKey(id) || !ADJUSTMENTS.get(id).tightens()) {
        wrong.add(id + " is gone, or no longer marked as tightening");
      }
    }
    for (AdjustmentEntry entry : ADJUSTMENTS.values()) {
      String told =
          Stream.concat(Stream.of(entry.name(), entry.does()), entry.steps().stream())
              .collect(Collectors.joining(" "))
              .toLowerCase();
      var found = SMALLER.matcher(told);
      if (!entry.tightens() && !REVIEWED_NOT_TIGHTENING.containsKey(entry.id()) && found.find()) {
        wrong.add(entry.id() + " says \"" + found.group() + "\": review whether it tightens");
      }
    }
    assertEquals("", String.join("\n", wrong));
  }

  /** Words in a trial that make something closer, if only for a while. */
  private static final Pattern CLOSER =
      Pattern.compile(
          "\\b(shorter|shorten|tighter|closer|firm|firmer|fold|folded|pinch|lap|tucks|flatter|ribbon"
              + "|out of|in evenly|in until|only the side)\\b");

  /** Reviewed: they use such a word and press nothing closer. */
  private static final Map<String, String> REVIEWED_TRIALS =
      Map.ofEntries(
          Map.entry("lower-the-neckline", "the edge is folded away from the body"),
          Map.entry("lower-the-armhole", "the edge is folded away from the body"),
          Map.entry("widen-the-straps", "a folded cloth lies under the strap"),
          Map.entry("pad-the-straps", "a folded cloth lies under the strap"));

  @Test
  void every_trial_that_makes_something_closer_is_of_a_change_that_is_marked() {
    List<String> wrong = new ArrayList<>();
    int closer = 0;
    for (AdjustmentEntry entry : ADJUSTMENTS.values()) {
      String test =
          Answering.BOOK.source().wording().voices().get("en").changes().get(entry.id()).test();
      if (test != null && CLOSER.matcher(test).find()) {
        closer++;
        if (!entry.tightens() && !REVIEWED_TRIALS.containsKey(entry.id())) {
          wrong.add(entry.id() + ": " + test);
        }
      }
    }
    assertEquals("", String.join("\n", wrong));
    assertTrue(closer > 15, "trials that make something closer: " + closer);
  }

  @Provide
  Arbitrary<ObjectNode> fittings() {
    return FittingArbitrary.any();
  }

  @Provide
  Arbitrary<ObjectNode> redFlagged() {
    return FittingArbitrary.showing(RED_FLAGS);
  }

  @Provide
  Arbitrary<ObjectNode> inCare() {
    return Combinators.combine(FittingArbitrary.any(), Arbitraries.of(NOTHING))
        .as(
            (given, circumstance) -> {
              ObjectNode more = given.deepCopy();
              more.withObject("/circumstances").put(circumstance, true);
              return more;
            });
  }

  /** A band that measures about as long as the body, and slack told of straps or back. */
  @Provide
  Arbitrary<ObjectNode> besideSlack() {
    return Combinators.combine(
            Arbitraries.of(SLACK).set().ofMinSize(1),
            Arbitraries.integers().between(1, 80),
            Arbitraries.of(SLACK_ONLY),
            Arbitraries.integers().between(650, 1000),
            Arbitraries.integers().between(-40, 60),
            Arbitraries.of("metric", "imperial"))
        .as(
            (signs, amount, circumstance, girth, longer, units) -> {
              ObjectNode given = JsonNodeFactory.instance.objectNode().put("units", units);
              for (String sign : signs) {
                ObjectNode one = given.withArray("/signs").addObject().put("sign", sign);
                if (Answering.BOOK.catalog().signs().get(sign).slack()) {
                  one.put("amount", amount + " mm");
                }
              }
              given.withObject("/circumstances").put(circumstance, true);
              given.withObject("/body").put("underbust", girth + " mm");
              given.withObject("/garment").put("underband", girth + longer + " mm");
              return given;
            });
  }

  /** Common practice: slack straps are not let out because they may not be shortened. */
  @Test
  void where_the_right_change_is_withheld_its_opposite_is_not_offered_instead() throws Exception {
    String signs =
        "\"signs\": [{\"sign\": \"neckline-gapes\"},"
            + " {\"sign\": \"gape-closes-when-the-strap-is-lifted\"},"
            + " {\"sign\": \"straps-slack-at-their-shortest\"},"
            + " {\"sign\": \"no-finger-passes-under-the-strap\"},"
            + " {\"sign\": \"band-digs-in\", \"seen\": \"absent\"}]";
    Answer nursing = answer("{" + signs + ", \"circumstances\": {\"nursing\": true}}");
    assertEquals("straps-too-long", nursing.causes().get(0).id());
    assertEquals(List.of(), nursing.adjustments());
    assertEquals("shorten-the-straps", answer("{" + signs + "}").adjustments().get(0).id());
  }

  private static Answer answer(String request) throws JsonProcessingException {
    return Answering.answer(new ObjectMapper().readTree(request));
  }
}
