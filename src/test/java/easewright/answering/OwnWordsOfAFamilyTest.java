package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheets;
import easewright.rulebook.BookCopy;
import easewright.rulebook.NonsenseFamily;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.check.BookProblem;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Shared entries speak of the usual family's garment; another family says them its own way. */
class OwnWordsOfAFamilyTest {
  private static final String FILE = NonsenseFamily.ID + "/family.yaml";
  private static final String SIGN = "tight-everywhere";

  @TempDir Path folder;

  private BookCopy saying(String instead) {
    BookCopy book = BookCopy.in(folder);
    NonsenseFamily.write(folder, "common/health, common/cloth, common/making");
    book.write(FILE, book.text(FILE) + "instead:\n" + instead);
    return book;
  }

  private static String question(RuleBookSource book) {
    return book.wording().voices().get("en").questions().get(SIGN);
  }

  @Test
  void they_stand_in_its_part_of_the_book_and_in_no_other() {
    saying(
        """
          catalog:
            tight-everywhere: {ask: "Is the quorble tight?"}
          voice:
            questions:
              tight-everywhere: Is your quorble tight?
          wording:
            no-fault: The quorble is well.
        """);
    RuleBook both = RuleBook.compile(folder);
    RuleBookSource ours = both.families().get(NonsenseFamily.ID).source();
    RuleBookSource usual = RuleBook.compiledIn().source();
    assertEquals("Is the quorble tight?", ours.catalog().signs().get(SIGN).ask());
    assertEquals(
        usual.catalog().signs().get(SIGN).check(), ours.catalog().signs().get(SIGN).check());
    assertEquals("Is your quorble tight?", question(ours));
    assertEquals("The quorble is well.", ours.wording().say("no-fault"));
    assertEquals(usual.catalog().signs().get(SIGN), both.source().catalog().signs().get(SIGN));
    assertEquals(usual.wording(), both.source().wording());
  }

  @Test
  void words_for_what_is_not_there_are_told_with_the_nearest() {
    saying(
        """
          catalog:
            tight-everywere: {ask: "Is the quorble tight?"}
          voice:
            cautions:
              growing-wearers: {says: It grows., ask: Ask., about: it}
          wording:
            no-faults: The quorble is well.
        """);
    List<String> told =
        new OwnBook(new PatternSheets()).problems(folder).stream().map(BookProblem::text).toList();
    for (String nearest : List.of("tight-everywhere", "growing-wearer", "no-fault")) {
      assertTrue(
          told.stream().anyMatch(one -> one.startsWith(FILE + ":") && one.contains(nearest)),
          nearest + " is not among " + told);
    }
  }
}
