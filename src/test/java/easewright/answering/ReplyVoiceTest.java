package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.rulebook.Catalog;
import easewright.rulebook.RuleBook;
import easewright.rulebook.Voice;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Replies as a teacher would post them. What one holds, in what order and how long is common
 * practice of help boards: greeting, her own question, the likely cause, one change that can be
 * undone first, one thing to send back.
 */
class ReplyVoiceTest {
  private static final Edition EDITION = Edition.of(RuleBook.compiledIn(), new PatternSheets());
  private static final Catalog CATALOG = EDITION.book().catalog();
  private static final Voice VOICE = EDITION.book().source().wording().voices().get("en");
  private static final Pattern ID = Pattern.compile("\\b[a-z]+-[a-z]+-[a-z-]+\\b");
  private static final int MOST_WORDS = 110;

  private static Map<JsonNode, Answer> answers;

  /** Every fitting in view: cases of the rules' pages, whole fittings, posts. */
  private static synchronized Map<JsonNode, Answer> answers() throws IOException {
    if (answers == null) {
      answers = answered();
    }
    return answers;
  }

  private static Map<JsonNode, Answer> answered() throws IOException {
    Map<JsonNode, Answer> answers = new LinkedHashMap<>();
    requests()
        .forEach(
            request -> {
              ObjectNode named = request.deepCopy();
              named.put("nickname", "Fern");
              try {
                answers.put(named, EDITION.answer(named));
              } catch (FaultyRequest refused) {
                // a post about something else gets no reply
              }
            });
    return answers;
  }

  private static Stream<JsonNode> requests() throws IOException {
    List<JsonNode> requests = new ArrayList<>();
    EDITION.book().source().pages().values().stream()
        .flatMap(page -> page.cases().stream())
        .map(one -> one.given())
        .filter(given -> given.isObject() && !given.isEmpty())
        .forEach(requests::add);
    for (JsonNode one : items("fittings/everyday.yaml", "fittings/running.yaml")) {
      requests.add(one.path("request"));
    }
    for (JsonNode one : posts()) {
      requests.add(JsonNodeFactory.instance.objectNode().put("text", one.path("text").asText()));
    }
    return requests.stream();
  }

  private static List<JsonNode> posts() throws IOException {
    return items(
        "posts/a.yaml",
        "posts/b.yaml",
        "posts/c.yaml",
        "posts/d.yaml",
        "posts-strangers/e1.yaml",
        "posts-strangers/e3.yaml",
        "posts-strangers/e4.yaml");
  }

  private static List<JsonNode> items(String... files) throws IOException {
    List<JsonNode> items = new ArrayList<>();
    for (String file : files) {
      items.addAll(
          new YAMLMapper()
              .readValue(
                  Files.readString(Path.of("src/test/resources", file)),
                  new TypeReference<List<JsonNode>>() {}));
    }
    return items;
  }

  private static String text(Answer answer) {
    return String.join("\n\n", answer.reply());
  }

  private static int words(String text) {
    return text.strip().split("\\s+").length;
  }

  @Test
  void a_reply_is_cutand_plain_and_greets_her() throws IOException {
    int usual = 0;
    Map<JsonNode, Answer> all = answers();
    for (Map.Entry<JsonNode, Answer> one : all.entrySet()) {
      String text = text(one.getValue());
      String about = one.getKey() + "\n" + text;
      assertTrue(words(text) < MOST_WORDS, about);
      usual += words(text) <= VOICE.talk().usual() ? 1 : 0;
      assertTrue(text.contains("Fern"), about);
      assertFalse(text.contains("%"), about);
      assertFalse(ID.matcher(text).results().anyMatch(id -> isId(id.group())), about);
      assertFalse(text.contains("{") || text.contains("null") || text.contains("http"), about);
      assertFalse(text.contains("Did I read that right"), about);
    }
    int share = usual * 100 / all.size();
    assertTrue(share >= 75, "of a usual length: " + share);
  }

  private static boolean isId(String word) {
    return !CATALOG.nameOf(word).equals(word);
  }

  /** A name is a label: nobody says "most likely: band too long". */
  @Test
  void a_cause_is_never_said_by_its_label() throws IOException {
    answers()
        .forEach(
            (request, answer) ->
                answer
                    .causes()
                    .forEach(
                        cause ->
                            assertFalse(
                                text(answer).contains(": " + cause.name()),
                                () -> request + "\n" + text(answer))));
  }

  @Test
  void nothing_tighter_is_asked_for_where_a_caution_stands() throws IOException {
    int cautioned = 0;
    for (Map.Entry<JsonNode, Answer> one : answers().entrySet()) {
      Answer answer = one.getValue();
      if (answer.nothingTighter()) {
        cautioned++;
        VOICE.changes().entrySet().stream()
            .filter(words -> CATALOG.adjustments().get(words.getKey()).tightens())
            .filter(words -> !isOffered(answer, words.getKey()))
            .map(words -> words.getValue().bare())
            .forEach(bare -> assertFalse(text(answer).contains(bare), one.getKey() + text(answer)));
      }
    }
    assertTrue(cautioned > 20, "cautioned: " + cautioned);
  }

  private static boolean isOffered(Answer answer, String id) {
    return answer.adjustments().stream().map(AdjustmentNote::id).anyMatch(id::equals);
  }

  @Test
  void a_danger_is_said_first_and_no_change_is_named_but_one_for_afterwards() throws IOException {
    int dangers = 0;
    for (Map.Entry<JsonNode, Answer> one : answers().entrySet()) {
      Answer answer = one.getValue();
      if (answer.isDanger()) {
        dangers++;
        Voice.CautionWords words = VOICE.cautions().get(answer.cautions().get(0).id());
        assertEquals(words.says(), answer.reply().get(1), one.getKey()::toString);
        assertTrue(text(answer).contains(answer.cautions().get(0).doNow()), text(answer));
        assertTrue(text(answer).contains(words.ask()), text(answer));
        boolean later = answer.afterwards() != null;
        VOICE
            .changes()
            .values()
            .forEach(
                change ->
                    assertFalse(!later && text(answer).contains(change.bare()), text(answer)));
        assertTrue(!later || text(answer).contains(words.then()), text(answer));
      }
    }
    assertTrue(dangers > 20, "dangers: " + dangers);
  }

  @Test
  void the_change_is_told_with_what_to_try_before_a_cut() throws IOException {
    int changes = 0;
    for (Map.Entry<JsonNode, Answer> one : answers().entrySet()) {
      Answer answer = one.getValue();
      if (answer.clear() && !answer.adjustments().isEmpty()) {
        changes++;
        AdjustmentNote first = answer.adjustments().get(0);
        Voice.ChangeWords words = VOICE.changes().get(first.id());
        String begins = words.does().split("\\{")[0].strip();
        String text = text(answer);
        assertTrue(
            text.toLowerCase().contains(begins.toLowerCase())
                || text.toLowerCase().contains(words.bare().toLowerCase()),
            one.getKey() + "\n" + text);
        if (first.undo().equals("recut") && words.trial() != null && words(text) < 90) {
          assertTrue(
              text.contains(words.trial())
                  || words.next() != null && text.contains(words.next())
                  || text.contains("so you can go ahead"),
              one.getKey() + "\n" + text);
        }
      }
    }
    assertTrue(changes > 100, "changes: " + changes);
  }

  /** A question that was read is answered before anything but cautions. */
  @Test
  void what_she_asks_is_answered() throws IOException {
    int asked = 0;
    for (JsonNode post : posts()) {
      ObjectNode request =
          JsonNodeFactory.instance.objectNode().put("text", post.path("text").asText());
      Answer answer;
      try {
        answer = EDITION.answer(request);
      } catch (FaultyRequest refused) {
        continue;
      }
      if (!answer.isDanger() && !answer.read().path("questions").isEmpty()) {
        asked++;
        assertTrue(answer.reply().size() > 1, request + "\n" + text(answer));
      }
    }
    assertTrue(asked > 40, "asked: " + asked);
  }

  private static Answer answer(String json) throws IOException {
    return EDITION.answer(new ObjectMapper().readTree(json.replace('\'', '"')));
  }

  private static final String LOOSE =
      "The band rides up at the back and pulls 5 cm off my body, it has always done so. ";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Is that normal?|normal||put right",
        "Why does it do that?|cause||",
        "What should I do?|do||",
        "Do I have to start again?|again||No",
        "How much do I take off?|amount||let the pins decide",
        "Should I go up a size?|size|larger|No",
        "Should I cut a smaller band?|size|shorter-band|Yes",
        "Is it the fabric?|thing|cloth|I don't think it's the cloth",
        "Is it the fabric or the band?|thing|cloth|I think it's the band",
        "Do I have to change anything?|must||Yes",
        "Is it too loose?|too||",
        "Must I make a new one from the start?|again||No",
        "Am I going mad?|mad||No, you're not",
        "Do I take out the whole amount or only half?|whole||",
        "Which do I fix first?|first||I'd begin here",
        "Shall I go another centimetre?|more||leave that as it is",
        "Is it because I am heavy?|me||it isn't you",
        "Is it me?|me||it isn't you",
        "What is my mistake?|cause||",
        "Is it band or straps?|thing|band|I think it's the band",
        "Is it 6 or 12?|amount||let the pins decide",
        "Shall I take another inch?|more||leave that as it is",
        "Should I go for something looser?|act|roomier|No, I'd rather take",
        "Must it be thrown away or can I repair this?|again||No",
        "Must they match?|sides||Both sides alike",
        "Is she right?|right||",
        "Should I see a doctor?|doctor||ask your doctor",
        "Do I change the paper pattern too?|for-all||whether it helps on this one",
        "How can I test that?|test||"
      })
  void each_kind_of_question_is_read_and_answered(
      String question, String kind, String about, String says) throws IOException {
    Answer answer = answer("{'text': '" + LOOSE + question + "'}");

    JsonNode read = answer.read().path("questions").path(0);
    assertEquals(kind, read.path("kind").asText(), text(answer));
    assertEquals(about, read.path("about").textValue(), text(answer));
    assertTrue(says == null || answer.reply().get(1).contains(says), text(answer));
  }

  /** Any question may be asked about any garment; its words are those of that garment. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Should I cut a smaller size?",
        "Should I go up a size?",
        "Do I cut a smaller band?",
        "Should the cups be bigger?",
        "Which size should I cut?",
        "Is it the elastic?",
        "Is it the fabric or my sewing?",
        "Should I make it tighter?",
        "Should I go for something looser?",
        "How much do I take off?",
        "Where do I take it in?",
        "Do I have to start again?",
        "Can it be saved?",
        "Which do I fix first?",
        "Must they match?",
        "How can I test that?",
        "Is that normal?",
        "Is it me?",
        "Should I take in the waist?",
        "Will it give with wear?"
      })
  void questions_about_leggings_are_answered_without_a_word_of_bras(String question)
      throws IOException {
    for (String told :
        List.of(
            "My leggings slide down all day and the crotch hangs low. ",
            "My leggings slide down all day. I pinned the waist 4 cm smaller and they stayed up. ",
            "My leggings are fine, nothing slides and nothing digs in. ")) {
      Answer answer = answer("{'family': 'leggings', 'text': '" + told + question + "'}");
      assertTrue(answer.reply().size() > 1, text(answer));
      assertFalse(text(answer).matches("(?s).*\\b(bra|bust|cups?|straps?)\\b.*"), text(answer));
    }
  }

  private static final String GAPE =
      "The front armhole pokes out. A neat fold of 1 cm on each side makes it lie flat. ";
  private static final String HEM = "The bottom edge rolls up when I sit. ";
  private static final String TIGHT =
      "The band digs in and leaves red marks, and I can hardly close it. ";

  /**
   * A plain yes or no to a change or a cause she asks about, never against the advice below it
   * (common practice of help boards). Where the second column is empty, no change is asked about.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        GAPE + "Do I crank up the armhole elastic?|No,",
        GAPE + "A tighter armhole elastic?|No,",
        LOOSE + "A friend told me to take in the side seams.|Yes",
        LOOSE + "A friend told me to take in the side seams, so I did.|''",
        LOOSE + "So wider padded straps next?|No,",
        LOOSE + "Would looser straps do it?|No,",
        LOOSE + "My physio told me to get looser straps.|''",
        LOOSE + "I saw my physio. She told me to get looser straps.|''",
        LOOSE + "We learned to make a deeper armhole, is it correct?|No,",
        LOOSE + "We learned a lot about the armhole at school.|''",
        LOOSE + "Is my bra too small?|No,",
        LOOSE + "Are my cups too small?|No,",
        LOOSE
            + "Could my shoulder be doing that?|No, I don't think it's the line of your shoulders",
        LOOSE + "Do I need to fix my posture or the bra?|stand and sit",
        LOOSE + "Friends say my straps are too long, are they?|straps that are a bit long",
        TIGHT + "Can I just wear it until it gives?|No, I wouldn't",
        TIGHT + "Should I make it bigger round?|You could let out the band",
        HEM + "Can I get away with pulling the elastic tighter?|No,",
        TIGHT + "My sister says stitch it smaller. Should I listen?|No, I'd rather use a softer",
        LOOSE + "Do I need stiffer elastic?|elastic"
      })
  void what_she_asks_about_gets_a_plain_answer(String post, String says) throws IOException {
    Answer answer = answer(new ObjectMapper().createObjectNode().put("text", post).toString());
    if (says.isEmpty()) {
      assertTrue(answer.asked().isEmpty(), text(answer));
    } else {
      assertTrue(answer.reply().get(1).contains(says), text(answer));
    }
  }

  /** Look-alikes: the same words, and nothing is asked. */
  @ParameterizedTest
  @CsvSource({
    "My normal size is 80C.",
    "I went up a size last year.",
    "My sister showed me how much she took off.",
    "I know why it does that.",
    "The saucer is too big for the pot.",
    "I must change the needle one day.",
    "I wanted to fix the first one for my sister.",
    "I have some more of the same cloth.",
    "It gets tighter towards the evening.",
    "My sister says hers is smaller.",
    "It stands off by 6 or 12 mm.",
    "It is not for me."
  })
  void what_is_told_is_no_question(String told) throws IOException {
    Answer answer = answer("{'text': '" + LOOSE + told + "'}");
    assertTrue(answer.read().path("questions").isEmpty(), answer.read()::toString);
  }

  /** One answer, though she asks in two ways; doubt is said once. */
  @Test
  void nothing_is_said_twice() throws IOException {
    Pattern doubt =
        Pattern.compile("guess|can't tell|could be|hard to say|not sure|Several things");
    for (Map.Entry<JsonNode, Answer> one : answers().entrySet()) {
      String text = text(one.getValue());
      List<String> sentences = List.of(text.split("(?<=[.?!])\\s+"));
      assertEquals(
          sentences.size(), new TreeSet<>(sentences).size(), () -> one.getKey() + "\n" + text);
      long doubts = sentences.stream().filter(doubt.asPredicate()).count();
      assertTrue(doubts <= 2, () -> one.getKey() + "\n" + text);
    }
  }

  /** A teacher lets her pin it before she asks for more. */
  @Test
  void where_the_cause_is_not_sure_a_trial_is_asked_for_and_nothing_else() throws IOException {
    int tried = 0;
    for (Map.Entry<JsonNode, Answer> one : answers().entrySet()) {
      Answer answer = one.getValue();
      if (answer.trial() != null) {
        tried++;
        Voice.ChangeWords words = VOICE.changes().get(answer.trial().id());
        String text = text(answer);
        assertTrue(text.contains(words.shows()), one.getKey() + "\n" + text);
        String last = answer.reply().get(answer.reply().size() - 1);
        assertFalse(last.contains("?"), one.getKey() + "\n" + text);
      }
    }
    assertTrue(tried > 20, "trials: " + tried);
  }

  @Test
  void every_danger_can_be_mentioned_beside_a_graver_one() throws IOException {
    CATALOG.cautions().values().stream()
        .filter(one -> one.urgency().equals("stop"))
        .forEach(one -> assertTrue(VOICE.cautions().get(one.id()).about() != null, one.id()));
    Answer answer =
        answer(
            "{'signs': [{'sign': 'hot-red-or-painful-area'}, {'sign': 'fever'}],"
                + " 'circumstances': {'nursing': true}}");
    assertTrue(
        text(answer)
            .contains("Please mention the hot or red place and that you're nursing to them"),
        text(answer));
  }

  /** "Does the gape close?" is no question to somebody who told of none. */
  @Test
  void a_question_takes_nothing_for_granted_that_was_not_seen() throws IOException {
    answers()
        .forEach(
            (request, answer) ->
                VOICE
                    .talk()
                    .presupposes()
                    .forEach(
                        (sign, needed) -> {
                          boolean seen =
                              answer.understood().signs().stream()
                                  .anyMatch(one -> one.present() && needed.contains(one.id()));
                          assertFalse(
                              !seen && text(answer).contains(VOICE.questions().get(sign)),
                              () -> request + text(answer));
                        }));
  }

  @Test
  void what_may_not_be_taken_in_is_left_with_a_kind_word() throws IOException {
    String signs = "'signs': [{'sign': 'band-pinches-out', 'amount': '3 cm'}]";
    Answer answer = answer("{" + signs + ", 'circumstances': {'radiotherapy': true}}");
    assertTrue(answer.nothingTighter() && answer.adjustments().isEmpty(), text(answer));
    assertTrue(text(answer).contains("keep your 3 cm for later"), text(answer));
  }

  /** One measure, and nothing of the sort is asked for again. */
  /** Somebody who only measured is not praised for a test. */
  @Test
  void what_was_only_measured_is_thanked_for_as_a_number() throws IOException {
    String fitting =
        "{'signs': [{'sign': 'tight-between-the-shoulder-blades'}], 'trials': [{'adjustment':"
            + " 'widen-the-back', 'amount': '30 mm'%s}]}";
    Answer measured = answer(fitting.formatted(", 'how': 'measured'"));
    assertTrue(text(measured).contains("measuring") || text(measured).contains("numbers"));
    assertTrue(text(measured).contains("3 cm"), text(measured));
    Answer tried = answer(fitting.formatted(", 'how': 'pinned', 'outcome': 'right'"));
    assertTrue(text(tried).contains("test"), text(tried));
  }

  @Test
  void what_her_own_trial_told_is_not_asked_about() throws IOException {
    String slips = "'signs': [{'sign': 'straps-slip-off'}, {'sign': 'neckline-gapes'}]";
    assertTrue(asks(answer("{" + slips + "}")).contains("gape-closes-when-the-strap-is-lifted"));
    Answer told =
        answer(
            "{"
                + slips
                + ", 'trials': [{'adjustment': 'shorten-the-straps', 'how': 'pinned', 'outcome':"
                + " 'same'}]}");
    assertFalse(asks(told).contains("gape-closes-when-the-strap-is-lifted"));
    Answer fine = answer("{" + slips + ", 'fine': ['straps']}");
    assertFalse(asks(fine).contains("straps-slack-at-their-shortest"), asks(fine)::toString);
  }

  private static List<String> asks(Answer answer) {
    return answer.questions().stream().map(Answer.QuestionNote::sign).toList();
  }

  @Test
  void after_a_change_is_put_back_the_next_one_is_told() throws IOException {
    Answer answer =
        answer(
            "{'signs': [{'sign': 'straps-slip-off'}, {'sign':"
                + " 'strap-lies-at-the-edge-of-the-shoulder'}], 'earlier': [{'adjustment':"
                + " 'set-the-straps-shorter', 'outcome': 'worse'}]}");
    assertEquals("put-the-last-change-back", answer.adjustments().get(0).id(), text(answer));
    assertTrue(text(answer).contains("Then move both straps"), text(answer));
  }

  @Test
  void an_elastic_is_named_by_its_edge_where_only_one_was_spoken_of() throws IOException {
    String cut = "{'sign': 'edge-elastic-measures-shorter-than-planned'}";
    Answer one = answer("{'signs': [{'sign': 'neckline-cuts-in'}, " + cut + "]}");
    assertTrue(text(one).contains("the elastic at the neckline"), text(one));
    Answer two =
        answer(
            "{'signs': [{'sign': 'neckline-cuts-in'}, {'sign': 'armhole-cuts-or-chafes'}, "
                + cut
                + "]}");
    assertFalse(text(two).contains("the elastic at the neckline"), text(two));
  }

  @Test
  void what_she_tried_by_hand_is_not_asked_for_again() throws IOException {
    String signs = "{'signs': [{'sign': 'band-rides-up-at-the-back'}, {'sign': 'band-pinches-out',";
    String pinned = "'trials': [{'adjustment': 'take-in-the-band', 'how': 'pinned', 'outcome': ";
    Answer right = answer(signs + " 'amount': '4 cm'}], " + pinned + "'right'}]}");
    assertTrue(text(right).matches("(?s).*([Yy]our own test).*"), text(right));
    assertTrue(text(right).contains("Tack it like that"), text(right));
    assertFalse(text(right).contains("Pin it first"), text(right));
    Answer same = answer(signs + " 'amount': '4 cm'}], " + pinned + "'same'}]}");
    assertFalse(text(same).matches("(?s).*([Yy]our own test|Tack it like that).*"), text(same));
  }

  /**
   * What she saw tells that she has made the trial: the next step is told, and her test praised.
   */
  @Test
  void a_test_that_she_has_told_of_is_named_and_not_asked_for() throws IOException {
    String signs = "{'signs': [{'sign': 'straps-dig-in'}%s]}";
    String pad = ", {'sign': 'a-pad-under-the-strap-brings-relief'}";
    String told = text(answer(signs.formatted(pad)));
    assertTrue(told.contains("a pad under the strap helps"), told);
    assertTrue(told.matches("(?s).*(well done for testing|good test to make).*"), told);
    assertTrue(told.contains("Tack a soft strip") && !told.contains("Lay a folded cloth"), told);
    String untold = text(answer(signs.formatted("")));
    assertFalse(untold.contains("a pad under the strap helps"), untold);
    assertFalse(untold.contains("Tack a soft strip"), untold);
  }

  @Test
  void two_causes_that_are_both_there_are_told_one_after_the_other() throws IOException {
    String lining = "{'sign': 'lining-peeks-out'}, {'sign': 'lining-reaches-as-far-as-the-outer'}";
    String pad = "{'sign': 'straps-dig-in'}, {'sign': 'a-pad-under-the-strap-brings-relief'}";
    String both = text(answer("{'signs': [" + lining + ", " + pad + "]}"));
    assertTrue(both.contains("two things") && both.contains("trim the lining"), both);
    assertTrue(both.contains("make the straps wider"), both);
    assertFalse(both.contains("can't tell yet"), both);
    assertFalse(text(answer("{'signs': [" + lining + "]}")).contains("two things"));
  }

  /** Both of her questions get an answer beside the caution, and what she did is named. */
  @Test
  void her_questions_are_answered_beside_a_caution() throws IOException {
    String signs =
        "'signs': [{'sign': 'gape-closes-when-the-strap-is-lifted'}, {'sign': 'neckline-gapes',"
            + " 'amount': '1 1/2 in'}], 'text': '%sThe neckline of my bra stands"
            + " off. Is it me? Should I cut the whole thing smaller?'";
    String nursing = text(answer("{" + signs.formatted("I am nursing. ") + "}"));
    assertTrue(nursing.contains("While you're nursing"), nursing);
    assertTrue(nursing.contains("No, it isn't you."), nursing);
    assertTrue(nursing.contains("No, don't cut it smaller"), nursing);
    assertTrue(nursing.contains("the gape closes when the strap is shorter"), nursing);
    assertTrue(nursing.contains("keep your 1 1/2 in for later"), nursing);
    assertFalse(nursing.split("\n\n", 2)[1].contains("?"), nursing);
    String alone = text(answer("{" + signs.formatted("") + "}"));
    assertTrue(alone.contains("it isn't you") && !alone.contains("for later"), alone);
  }

  @Test
  void how_much_is_answered_with_her_number_where_it_has_to_wait() throws IOException {
    String band = "The band rides up and I can pinch out 4 cm at the back. How much do I take in?";
    String growing = text(answer("{'text': 'I am 13. " + band + "'}"));
    assertTrue(growing.contains("None of it for now; keep your 4 cm for later"), growing);
    assertFalse(text(answer("{'text': '" + band + "'}")).contains("for now; keep"));
  }

  /** Nothing seen, several things looked for: the answer to any "must I" is no. */
  @Test
  void where_nothing_is_seen_her_question_is_answered_with_no() throws IOException {
    String fine =
        "Nothing digs in, the straps do not slip, the neckline does not gape and the band does not"
            + " ride up. ";
    String tighter = text(answer("{'text': '" + fine + "Must I sew it closer?'}"));
    assertTrue(tighter.contains("No, there's no need"), tighter);
    String seen = text(answer("{'text': 'The armhole gapes. Must I sew it closer?'}"));
    assertFalse(seen.contains("No, there's no need"), seen);
    String unread =
        text(answer("{'text': '" + fine + "The seam runs odd. Must I sew it closer?'}"));
    assertFalse(unread.contains("No, there's no need"), unread);
  }

  @Test
  void a_question_is_not_answered_with_what_a_caution_forbids() throws IOException {
    Answer answer =
        answer("{'text': 'I am nursing. " + LOOSE + "Should I make the band tighter?'}");
    assertTrue(answer.nothingTighter());
    assertTrue(text(answer).contains("don't make anything tighter"), text(answer));
  }

  @Test
  void the_plain_voice_leaves_out_thanks_and_the_same_fitting_gets_the_same_reply()
      throws IOException {
    String signs = "'signs': [{'sign': 'band-rides-up-at-the-back'}], 'nickname': 'Fern'";
    Answer warm = answer("{" + signs + "}");
    Answer plain = answer("{" + signs + ", 'voice': 'plain'}");
    assertEquals("Hello Fern,", plain.reply().get(0));
    assertTrue(warm.reply().get(0).contains("thank"), text(warm));
    assertEquals(
        warm.reply().subList(1, warm.reply().size()),
        plain.reply().subList(1, plain.reply().size()));
    assertEquals(warm.reply(), answer("{" + signs + "}").reply());
    assertEquals("Fern", warm.soFar().path("nickname").asText());
  }

  @Test
  void every_cause_change_and_caution_that_comes_up_is_said_in_its_own_words() throws IOException {
    TreeSet<String> said = new TreeSet<>();
    for (Answer answer : answers().values()) {
      String text = text(answer);
      VOICE
          .causes()
          .forEach(
              (id, words) -> {
                if (text.contains(words.so()) || text.contains(words.perhaps())) {
                  said.add(id);
                }
              });
    }
    int share = said.size() * 100 / VOICE.causes().size();
    assertTrue(share >= 90, () -> "said: " + said.size() + " of " + VOICE.causes().size());
  }
}
