package easewright.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.Conclusions;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleStatement;
import easewright.rulebook.RuleStatement.Kind;
import easewright.rulebook.RuleText;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Compares the statements read from the sentences with those of the rule engine running the same
 * rules.
 */
class RuleMentionsTest {
  private static final RuleBook BOOK = RuleBook.compiledIn();
  private static final RuleMentions MENTIONS = new RuleMentions(BOOK.source().rules());

  private static List<String> read(Kind kind) {
    return MENTIONS.of(kind, statement -> statement.situation().equals("in any fitting")).stream()
        .map(RuleMentionsTest::line)
        .sorted()
        .toList();
  }

  private static String line(RuleStatement statement) {
    return String.join(
        " ", statement.subject(), statement.word().replace(' ', '-'), statement.object());
  }

  private static List<String> sorted(Stream<String> lines) {
    return lines.sorted().toList();
  }

  @Test
  void in_any_fitting_the_engine_says_what_is_read() {
    Conclusions always = BOOK.always();
    assertTrue(always.shows().size() > 100);
    assertEquals(
        sorted(always.shows().stream().map(s -> s.cause() + " " + s.howOften() + " " + s.sign())),
        read(Kind.SHOWS));
    assertEquals(
        sorted(
            always.cures().stream().map(c -> c.adjustment() + " " + c.howMuch() + " " + c.cause())),
        read(Kind.CURES));
    assertEquals(
        sorted(always.worsens().stream().map(w -> w.adjustment() + "  " + w.cause())),
        read(Kind.WORSENS));
  }

  @Test
  void no_sentence_that_links_two_names_is_missed() {
    for (Kind kind : Kind.values()) {
      String verb =
          switch (kind) {
            case SHOWS -> " shows as ";
            case CURES -> " cures ";
            case WORSENS -> " worsens ";
            case HOLDS_BACK -> "hold back \"";
            case REPLACES -> " in place of ";
          };
      long written =
          BOOK.source().rules().stream()
              .map(RuleText::body)
              .flatMap(String::lines)
              .filter(line -> line.contains(verb))
              .count();
      assertEquals(written, MENTIONS.of(kind, statement -> true).size(), kind.name());
    }
  }
}
