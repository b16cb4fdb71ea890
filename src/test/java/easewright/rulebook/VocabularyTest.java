package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.RuleText.Comparison;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A number that is compared is always told, whatever sentence compares it. */
class VocabularyTest {
  private static final String FILE = "sports-bra/findings/elastic-weak-by-test.dslr";
  private static final String OLD = "the \"elastic tension\" is below \"elastic too soft\"";

  @TempDir Path folder;

  private BookCopy withSentence(String sentence, String said) {
    BookCopy book = BookCopy.in(folder);
    book.write("vocabulary.dsl", book.text("vocabulary.dsl") + "\n[when]" + sentence + "\n");
    book.put(FILE, OLD, said);
    return book;
  }

  private static List<Comparison> told(BookCopy book) {
    return RuleBookSource.read(book.folder()).rules().stream()
        .filter(rule -> rule.name().equals("elastic weak by test: it holds"))
        .findFirst()
        .orElseThrow()
        .comparisons();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "value < parameter(\"{limit}\") | below",
        "value<=parameter(\"{limit}\") | at most",
        "parameter(\"{limit}\") > value | below",
        "parameter(\"{limit}\") < value | above",
        "value > parameter(\"elastic-too-soft\") | above"
      })
  void a_comparison_in_a_new_sentence_is_told_as_the_engine_makes_it(String written, String how) {
    String fits = "the \"{figure}\" stands to \"{limit}\"";
    BookCopy book =
        written.contains("{limit}")
            ? withSentence(
                fits + "=Figure(id == \"{figure}\", " + written + ")",
                "the \"elastic tension\" stands to \"elastic too soft\"")
            : withSentence(
                "the \"{figure}\" is plain=Figure(" + written + ", id == \"{figure}\")",
                "the \"elastic tension\" is plain");
    assertEquals(List.of(new Comparison("elastic-tension", how, "elastic-too-soft")), told(book));
  }

  @ParameterizedTest
  @ValueSource(strings = {", ", " && "})
  void both_limits_of_one_sentence_are_told(String and) {
    BookCopy book =
        withSentence(
            "the \"{figure}\" lies between \"{limit}\" and \"{limit2}\"=Figure(id == \"{figure}\","
                + " value > parameter(\"{limit}\")"
                + and
                + "value < parameter(\"{limit2}\"))",
            "the \"elastic tension\" lies between \"elastic too soft\" and \"elastic too hard\"");
    assertEquals(
        List.of(
            new Comparison("elastic-tension", "above", "elastic-too-soft"),
            new Comparison("elastic-tension", "below", "elastic-too-hard")),
        told(book));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Figure(id == \"{figure}\", value - parameter(\"{limit}\") < 0)",
        "Figure(id == \"{figure}\", value * 2 < parameter(\"{limit}\"))",
        "Figure(id == \"{figure}\", value < 0.04)",
        "Figure(id == \"{figure}\", value != parameter(\"{limit}\"))",
        "Figure(id == \"{figure}\", !(value > parameter(\"{limit}\")))",
        "Figure(id == \"{figure}\", value < parameter(\"{limit}\") || value > 1)",
        "Figure(id == \"{figure}\", sd < parameter(\"{limit}\"))",
        "Figure(id != \"{figure}\", value < parameter(\"{limit}\"))",
        "Figure(value < parameter(\"{limit}\"))",
        "Figure(id == \"{figure}\")",
        "not Figure(id == \"{figure}\", value >= parameter(\"{limit}\"))",
        "exists Figure(id == \"{figure}\", value < parameter(\"{limit}\"))",
        "(AnyFitting() or Figure(id == \"{figure}\", value < parameter(\"{limit}\")))",
        "Figure(id == \"{figure}\", $v: value) eval($v < parameter(\"{limit}\"))",
        "$f: Figure(id == \"{figure}\") eval($f.value() < parameter(\"{limit}\"))",
        "easewright.rulebook.facts.Figure(id == \"{figure}\", this.value < parameter(\"{limit}\"))",
        "Figure(id == \"{figure}\", value < "
      })
  void a_sentence_whose_comparison_cannot_be_told_is_refused_with_line_and_remedy(String becomes) {
    BookCopy book =
        withSentence(
            "the \"{figure}\" falls short of \"{limit}\"=" + becomes,
            "the \"elastic tension\" falls short of \"elastic too soft\"");
    RuleBookFault fault =
        assertThrows(RuleBookFault.class, () -> RuleBookSource.read(book.folder()));
    int line = book.line("vocabulary.dsl", "falls short of");
    assertTrue(fault.getMessage().startsWith("vocabulary.dsl:" + line + ":"), fault.getMessage());
    assertTrue(fault.getMessage().contains(" Write Figure(id == "), fault.getMessage());
  }

  /** Lines that the engine takes as they are would compare behind the vocabulary's back. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "any " + OLD,
        OLD + "\n  > Figure(id == \"elastic-tension\", value < 0.04)",
        "> not\n  " + OLD,
        "> Figure(id == \"elastic-tension\", value < 0.04)"
      })
  void a_rule_that_compares_beside_its_sentences_is_refused(String lines) {
    BookCopy book = BookCopy.in(folder);
    book.put(FILE, OLD, lines);
    RuleBookFault fault = assertThrows(RuleBookFault.class, () -> RuleBook.compile(book.folder()));
    assertTrue(fault.getMessage().contains("elastic-weak-by-test"), fault.getMessage());
  }
}
