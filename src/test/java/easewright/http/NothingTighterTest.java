package easewright.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.RuleBookService;
import easewright.check.SizeAnswer;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.WordsLeft;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.rulebook.RuleBook;
import easewright.saying.CheckPages;
import easewright.saying.Replies;
import easewright.saying.ReplyLength;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * If a caution forbids tightening, no format of an answer mentions anything tighter or smaller.
 * Why: a tight bra contributes to blocked ducts (Mitchell et al. 2022, Breastfeed Med 17:360), a
 * tight band hinders breathing (Kipp et al. 2024, Med Sci Sports Exerc 56:1168); after an operation
 * the care team decides (Breast Cancer Care, Breast prostheses, bras and clothes after surgery).
 */
@Tag("long")
@QuarkusTest
class NothingTighterTest {
  static final int FITTINGS = Integer.getInteger("easewright.stopped", 4_000);
  private static final String SITE = "https://fit.example";

  @Inject RuleBookService rules;
  @Inject PatternSheets sheets;
  @Inject ObjectMapper json;

  /** Signs of the causes cured by some change that tightens: those of a loose garment. */
  static Set<String> shownByTheLoose(RuleBook book) {
    Set<String> causes =
        book.always().cures().stream()
            .filter(cure -> book.catalog().adjustments().get(cure.adjustment()).tightens())
            .map(cure -> cure.cause())
            .collect(Collectors.toSet());
    return book.always().shows().stream()
        .filter(shows -> causes.contains(shows.cause()))
        .map(shows -> shows.sign())
        .collect(Collectors.toSet());
  }

  @Test
  void no_form_of_four_thousand_answers_with_a_stop_names_anything_tighter_or_smaller() {
    RuleBook book = rules.edition().book();
    TighterWords tighter = new TighterWords(book.catalog());
    SmallerSizes smaller = new SmallerSizes();
    StoppedFittings fittings =
        new StoppedFittings(book.catalog(), shownByTheLoose(book), sheets.shipped());
    Map<String, List<String>> wrong = new TreeMap<>();
    int stopped = 0;
    int stillAdvised = 0;
    int dangers = 0;
    for (ObjectNode given : fittings.some(FITTINGS + FITTINGS / 5)) {
      Answer answer = answer(given);
      if (stopped == FITTINGS
          || answer == null
          || answer.cautions().stream().noneMatch(CautionNote::stopsTightening)) {
        continue;
      }
      stopped++;
      stillAdvised += answer.adjustments().isEmpty() ? 0 : 1;
      dangers += inDanger(book, answer) ? 1 : 0;
      // Taking up measured slack, down to the body and no further, is allowed.
      List<AdjustmentNote> slack =
          answer.adjustments().stream().filter(AdjustmentNote::slackOnly).toList();
      PatternSheet sheet = sheet(given);
      String cut = answer.understood().sizeCut();
      forms(answer)
          .forEach(
              (form, text) -> {
                List<String> found = new ArrayList<>(tighter.in(TighterWords.words(text), slack));
                smaller.in(text, sheet, cut).ifPresent(found::add);
                found.forEach(
                    one ->
                        wrong
                            .computeIfAbsent(form, f -> new ArrayList<>())
                            .add(one + "\n      of " + given));
              });
    }
    assertEquals("", said(wrong));
    assertEquals(FITTINGS, stopped, "too few fittings with a stop");
    assertTrue(dangers > FITTINGS / 3, "too few dangers: " + dangers);
    assertTrue(stillAdvised > FITTINGS / 5, "hardly anything is advised: " + stillAdvised);
  }

  @Test
  void a_size_check_with_a_stop_names_no_size_smaller_than_the_one_to_take() {
    SmallerSizes smaller = new SmallerSizes();
    Random random = new Random(16);
    List<String> wrong = new ArrayList<>();
    int taken = 0;
    for (int i = 0; i < 600; i++) {
      ObjectNode asked = json.createObjectNode();
      int under = 640 + random.nextInt(460);
      asked
          .putObject("body")
          .put("underbust", under + " mm")
          .put("bust", under + 90 + random.nextInt(200) + " mm");
      PatternSheet sheet = null;
      if (random.nextBoolean()) {
        sheet = sheets.shipped().get(random.nextInt(sheets.shipped().size()));
        asked.putObject("pattern").put("sheet", sheet.id());
      }
      boolean danger = random.nextInt(4) == 0;
      if (danger) {
        asked.putArray("signs").addObject().put("sign", "breathless-or-dizzy");
      } else {
        asked.putObject("circumstances").put("nursing", true);
      }
      SizeAnswer answer = rules.edition().size(asked);
      if (danger) {
        assertNull(answer.size());
        assertNull(answer.take());
        assertEquals(List.of(), answer.labels());
      }
      if (answer.mixed() == null) {
        taken += answer.take() == null ? 0 : 1;
        String take = answer.take() == null ? null : answer.take().size();
        String data = strings(json.valueToTree(answer), new StringBuilder()).toString();
        for (String form : List.of(CheckPages.sizePost(answer).render(), data)) {
          smaller.in(form, sheet, take).ifPresent(one -> wrong.add(one + " of " + asked));
        }
      }
    }
    assertEquals("", wrong.stream().limit(5).collect(Collectors.joining("\n")));
    assertTrue(taken > 200, "hardly any size was named: " + taken);
  }

  @Test
  void words_that_only_a_person_can_judge_come_first_and_nothing_tighter_is_advised_with_them() {
    ObjectNode read = json.createObjectNode();
    read.putArray("readYourself").addObject().put("text", "my side went all funny");
    ObjectNode given = json.createObjectNode();
    for (String sign : List.of("band-rides-up-at-the-back", "band-pulls-off-the-body")) {
      given.withArray("/signs").addObject().put("sign", sign);
    }
    Answer usual = rules.edition().answer(given);
    assertTrue(usual.adjustments().stream().anyMatch(AdjustmentNote::tightens));
    Answer answer =
        rules
            .edition()
            .diagnosis()
            .answer(rules.edition().reader().read(given), new WordsLeft(true, false), false)
            .goingOnFrom(given, read);
    assertTrue(answer.adjustments().stream().noneMatch(AdjustmentNote::tightens));
    forms(answer)
        .forEach(
            (form, text) -> {
              List<String> words = TighterWords.words(text);
              if (form.endsWith("LONG")) { // the short one is the wearer's
                String begins =
                    "for those who want to know more please read this post yourself my side went"
                        + " all funny nothing is made tighter";
                assertTrue(String.join(" ", words).contains(begins), form + words);
              }
              assertEquals(
                  List.of(),
                  new TighterWords(rules.edition().book().catalog()).in(words, List.of()),
                  form);
            });
  }

  /** Null if the random words contradict each other or the rest. */
  private Answer answer(ObjectNode given) {
    try {
      return rules.edition().answer(given);
    } catch (FaultyRequest contradictory) {
      return null;
    }
  }

  private static boolean inDanger(RuleBook book, Answer answer) {
    return answer.understood().signs().stream()
        .anyMatch(one -> one.present() && book.catalog().signs().get(one.id()).redFlag());
  }

  private PatternSheet sheet(JsonNode given) {
    JsonNode named = given.at("/pattern/sheet");
    return given.path("pattern").isMissingNode()
        ? null
        : sheets.find(named.asText("quillmere-top")).orElseThrow();
  }

  /** Each format as the service sends it; assistants and the command line send the same texts. */
  private Map<String, String> forms(Answer answer) {
    Map<String, String> forms = new LinkedHashMap<>();
    ObjectNode data = json.valueToTree(answer);
    data.remove(List.of("soFar", "read")); // the client's own words
    ((ObjectNode) data.path("understood")).remove("sizeCut");
    forms.put("JSON", strings(data, new StringBuilder()).toString());
    for (ReplyLength length : ReplyLength.values()) {
      forms.put("text " + length, Replies.text(answer, length, SITE));
      forms.put("Markdown " + length, Replies.markdown(answer, length, SITE));
      String page = Replies.html(answer, length, SITE, family -> Optional.empty());
      forms.put(
          "HTML " + length,
          page.substring(page.indexOf("<article"), page.indexOf("</article>"))
              .replaceAll("(?s)<svg class=\"garment marked\".*</svg>", " ")
              .replaceAll("</?(span|strong|em|a)\\b[^>]*>", "")
              .replaceAll("<[^>]+>", "\n"));
    }
    return forms;
  }

  private static StringBuilder strings(JsonNode node, StringBuilder all) {
    if (node.isTextual()) {
      return all.append(node.textValue()).append('\n');
    }
    node.forEach(child -> strings(child, all));
    return all;
  }

  private static String said(Map<String, List<String>> wrong) {
    return wrong.entrySet().stream()
        .map(
            one ->
                one.getKey()
                    + ", "
                    + one.getValue().size()
                    + " times, such as\n    "
                    + one.getValue().stream().limit(4).collect(Collectors.joining("\n    ")))
        .collect(Collectors.joining("\n"));
  }
}
