package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.number.WordLists;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.request.TextWithoutAnswer;
import easewright.rulebook.RuleBook;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shared words that name a change of one family are harmless in a text about another. */
class SharedWordsTest {
  private static final RuleBook BOOK = RuleBook.compiledIn();
  private static final Edition EDITION = Edition.of(BOOK, new PatternSheets());

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "leggings|held out at|I pinned 3 cm out of the %s altogether. All the rest is lovely.",
        "leggings|changes to come|They slide down all day. Do I %s?",
        "t-shirt|held out at|I pinned 3 cm out of the %s altogether. All the rest is lovely.",
        "t-shirt|changes to come|It rides up over the hips all day. Do I %s?",
      })
  void every_phrase_of_a_shared_list_is_read_in_another_family(
      String family, String list, String text) {
    Set<String> phrases =
        new TreeSet<>(new WordLists(BOOK.source().everyday().reader()).pairs(list).keySet());
    assertTrue(phrases.size() > 20, "phrases: " + phrases.size());
    List<String> refused = new ArrayList<>();
    for (String phrase : phrases) {
      try {
        EDITION.answer(
            JsonNodeFactory.instance
                .objectNode()
                .put("family", family)
                .put("text", text.formatted(phrase)));
      } catch (TextWithoutAnswer other) {
        // words of another garment may make it no question about this one
      } catch (FaultyRequest fault) {
        refused.add(phrase + ": " + fault.faults());
      }
    }
    assertEquals(List.of(), refused);
  }
}
