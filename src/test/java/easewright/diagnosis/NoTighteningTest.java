package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.CautionEntry;
import easewright.rulebook.Catalog.SignEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
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

  /** Circumstances under which no rule book of ours may advise tightening. */
  private static final List<String> STOPPING =
      List.of("nursing", "pregnant", "operatedRecently", "implantOrExpander");

  @Property(tries = 1500, shrinking = ShrinkingMode.BOUNDED)
  void with_a_red_flag_nothing_offered_tightens(@ForAll("redFlagged") ObjectNode given) {
    Answer answer = Answering.answer(given);
    assertNothingTightens(answer);
    assertEquals("stop", answer.cautions().get(0).urgency());
  }

  @Property(tries = 1500, shrinking = ShrinkingMode.BOUNDED)
  void in_a_circumstance_that_forbids_it_nothing_offered_tightens(
      @ForAll("inCare") ObjectNode given) {
    assertNothingTightens(Answering.answer(given));
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
      assertFalse(ADJUSTMENTS.get(offered.id()).tightens(), offered.id());
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
            .map(one -> CautionEntry.SOON.indexOf(one.soon()))
            .toList();
    assertEquals(soon.stream().sorted().toList(), soon, "the most urgent comes first");
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
    assertTrue(RED_FLAGS.size() >= 7, "the catalog has lost red flags: " + RED_FLAGS);
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
          "recut-the-edge-elastic",
          "cut-the-next-size-down",
          "cut-the-sister-size",
          "set-the-straps-shorter",
          "shorten-the-straps",
          "cross-the-straps",
          "firmer-strap-material",
          "sew-the-sides-alike");

  /** Reviewed: they speak of something smaller or firmer, and leave the garment no tighter. */
  private static final Map<String, String> REVIEWED_NOT_TIGHTENING =
      Map.of(
          "add-a-closure", "it adds an opening, fastened where it is loosest",
          "deepen-the-shaped-seam", "cloth is added at the fullest point and none taken off",
          "trim-the-lining", "only the enclosed edge of the lining is cut back",
          "measure-again", "the tape is not pulled tight",
          "stop-wearing-it-and-ask-a-clinician", "it warns of anything firmer");

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
    return Combinators.combine(FittingArbitrary.any(), Arbitraries.of(STOPPING))
        .as(
            (given, circumstance) -> {
              ObjectNode more = given.deepCopy();
              more.withObject("/circumstances").put(circumstance, true);
              return more;
            });
  }
}
