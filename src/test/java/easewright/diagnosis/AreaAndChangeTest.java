package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.inference.Posterior;
import easewright.rulebook.Conclusions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What wearers tell of areas and of what they tried. Which way each points is common practice; the
 * arithmetic is Bayes' rule in odds.
 */
class AreaAndChangeTest {
  private static final String RIDES = "{'sign': 'band-rides-up-at-the-back'}";

  private static JsonNode json(String text) throws Exception {
    return new ObjectMapper().readTree(text.replace('\'', '"'));
  }

  private static Posterior weighed(String text) throws Exception {
    Fitting fitting = Answering.read(json(text));
    List<EarlierAdjustment> tried = Answering.tried(fitting);
    Conclusions said = Answering.consult(Answering.facts(fitting));
    return Posterior.infer(
        Answering.KNOWLEDGE.networkFor(said, tried),
        Report.of(fitting, tried, said, Answering.KNOWLEDGE).stream()
            .map(Report::observation)
            .toList());
  }

  @Test
  void an_area_that_is_fine_speaks_against_its_causes_and_no_others() throws Exception {
    Posterior before = weighed("{'signs': [" + RIDES + "]}");
    Posterior after = weighed("{'signs': [" + RIDES + "], 'fine': ['straps']}");
    assertTrue(after.probability("straps-too-short") < before.probability("straps-too-short"));
    assertTrue(after.probability("band-too-long") >= before.probability("band-too-long"));
  }

  /** One denial: the odds fall about by half, as for one denied sign shown "often". */
  @Test
  void a_fine_area_is_one_denial_and_not_one_of_every_sign() throws Exception {
    Posterior before = weighed("{'signs': [{'sign': 'straps-slip-off'}]}");
    Posterior after = weighed("{'signs': [{'sign': 'straps-slip-off'}], 'fine': ['straps']}");
    double was = before.probability("straps-too-long") / before.nothing();
    double is = after.probability("straps-too-long") / after.nothing();
    assertTrue(is / was > 0.4 && is / was < 0.8, "odds fall to " + is / was);
  }

  @Test
  void a_trial_counts_as_a_change_does_and_one_that_was_right_for_more() throws Exception {
    String tried =
        "{'signs': [" + RIDES + "], '%s': [{'adjustment': 'take-in-the-band', 'outcome': '%s'}]}";
    double right = weighed(tried.formatted("trials", "right")).probability("band-too-long");
    double better = weighed(tried.formatted("trials", "better")).probability("band-too-long");
    double made = weighed(tried.formatted("earlier", "better")).probability("band-too-long");
    double same = weighed(tried.formatted("trials", "same")).probability("band-too-long");
    assertEquals(made, better, 1e-12);
    assertTrue(right > better && better > same, right + ", " + better + ", " + same);
  }

  /** What got better tells which of the causes that a change cures was there. */
  @Test
  void a_sign_that_got_better_speaks_for_the_cured_causes_that_show_as_it() throws Exception {
    String tried = "{'earlier': [{'adjustment': 'take-in-the-band', 'outcome': 'better'%s}]}";
    Posterior named = weighed(tried.formatted(", 'better': ['band-rides-up-at-the-back']"));
    Posterior other = weighed(tried.formatted(", 'better': ['straps-rub-the-neck']"));
    assertTrue(named.probability("band-too-long") > other.probability("band-too-long"));
  }

  @ParameterizedTest
  @CsvSource({
    "80C, 75C, cut-the-next-size-down",
    "80C, 75B, cut-the-next-size-down",
    "80C, 75D, cut-the-sister-size",
    "80C, 85B, cut-the-larger-sister-size",
    "80C, 85C, cut-the-next-size-up",
    "80C, 80D, add-to-the-shaped-seam",
    "80C, 80B, take-from-the-shaped-seam",
    "80C, 80E, ",
    "80C, 80C, ",
    "34D, 34DD, add-to-the-shaped-seam",
    "34DD, 34FF, ",
    "80C, 90C, ",
    "34DD, 32E, cut-the-sister-size",
    "34DD, 36D, cut-the-larger-sister-size",
    "mine, 36D, ",
  })
  void an_earlier_size_is_the_change_of_size_that_leads_to_it(
      String cut, String other, String change) throws Exception {
    for (String pattern :
        cut.startsWith("8") ? List.of("", "'pattern': {'sheet': 'quillmere-top'},") : List.of("")) {
      Fitting fitting =
          Answering.read(
              json(
                  "{"
                      + pattern
                      + "'sizeCut': '"
                      + cut
                      + "', 'earlier': [{'size': '"
                      + other
                      + "', 'outcome': 'worse'}]}"));
      List<String> tried =
          Answering.tried(fitting).stream().map(EarlierAdjustment::adjustment).toList();
      assertEquals(change == null ? List.of() : List.of(change), tried, pattern);
    }
  }

  // Common practice: a toile with the next cup that was worse shows that the cup was no smaller
  // than
  // it should be, one that was better that it was.
  @ParameterizedTest
  @ValueSource(strings = {"", "'pattern': {'sheet': 'quillmere-top'},"})
  void a_cup_more_that_was_worse_speaks_against_a_cup_too_small(String pattern) throws Exception {
    String asked =
        "{"
            + pattern
            + "'sizeCut': '80C', 'signs': [{'sign': 'strain-lines-across-the-bust'}],"
            + " 'earlier': [{'size': '80D', 'outcome': '%s'}]}";
    double worse = weighed(asked.formatted("worse")).probability("cup-too-small");
    double better = weighed(asked.formatted("better")).probability("cup-too-small");
    assertTrue(worse < better - 0.1, worse + " " + better);
    Answer answer = Answering.answer(json(asked.formatted("worse")));
    assertTrue(answer.tried().get(0).says().contains("toile in size 80D"), answer::toString);
  }

  @Test
  void the_amount_says_how_it_was_given() throws Exception {
    Answer answer =
        Answering.answer(
            json(
                "{'signs': [{'sign': 'neckline-gapes', 'amount': {'value': '1 cm', 'places': 2}},"
                    + " {'sign': 'band-rides-up-at-the-back', 'seen': 'absent'}],"
                    + " 'trials': [{'adjustment': 'wedge-out-of-the-neckline', 'how': 'pinned',"
                    + " 'amount': {'from': '1 cm', 'to': '1.5 cm', 'places': 2},"
                    + " 'outcome': 'right'}]}"));
    Answer.AdjustmentNote wedge =
        answer.adjustments().stream()
            .filter(one -> one.id().equals("wedge-out-of-the-neckline"))
            .findFirst()
            .orElseThrow();
    // The wedge is told for one side and made alike on the other: 25 mm in all would be too much.
    assertEquals(12.5, wedge.amount().mm(), 1e-9);
    assertTrue(
        wedge.amount().working().contains("10 mm to 15 mm at each of 2 places"),
        wedge.amount().working());
    assertEquals("10 mm at each of 2 places", answer.understood().signs().get(0).amount());
  }
}
