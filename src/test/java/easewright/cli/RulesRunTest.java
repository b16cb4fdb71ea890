package easewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.BookCopy;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command line for rule writers. */
@Tag("long")
class RulesRunTest {
  @TempDir Path folder;

  private BookCopy book;

  private record Ran(int code, String out, String err) {}

  @BeforeEach
  void copy() {
    book = BookCopy.in(folder.resolve("book"));
  }

  /** Runs "rules" with these arguments; BOOK stands for the copy. */
  private Ran run(String in, String... arguments) {
    List<String> all = new ArrayList<>(List.of("rules"));
    for (String argument : arguments) {
      all.add(argument.equals("BOOK") ? book.folder().toString() : argument);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Object command = Commands.rules(Commands.parsed(all.toArray(String[]::new))).orElseThrow();
    int code = new RulesRun(new ByteArrayInputStream(in.getBytes(UTF_8)), out, err).run(command);
    return new Ran(code, out.toString(UTF_8), err.toString(UTF_8));
  }

  @Test
  void a_sound_book_ends_with_0_a_faulty_one_with_1_and_none_with_2() {
    assertEquals(0, run("", "check", "BOOK").code());
    int line = book.put("catalog/causes/band.yaml", "prior: fairly common", "prior: comon");
    Ran faulty = run("", "check", "BOOK");
    assertEquals(1, faulty.code());
    assertTrue(
        faulty.out().startsWith("catalog/causes/band.yaml:" + line + ": \"comon\" is not known"),
        faulty.out());
    Ran none = run("", "check", folder.toString());
    assertEquals(2, none.code());
    assertTrue(none.err().contains("vocabulary.dsl"), none.err());
  }

  @Test
  void a_case_that_fails_is_shown_with_page_line_heading_what_was_expected_and_what_came() {
    String page = "sports-bra/findings/band-slack-by-measure.md";
    book.put("parameters/band.yaml", "value: 10 mm", "value: -30 mm");
    Ran ran = run("", "try", "BOOK", "band-slack-by-measure");
    assertEquals(1, ran.code(), ran.out());
    int line = book.line(page, "```yaml silent");
    assertTrue(
        ran.out().contains(page + ":" + line + ", silent: As the sheet plans it\n  expected"),
        ran.out());
    assertTrue(ran.out().contains("expected holds not: band-slack-by-measure; findings: ["));
    assertTrue(ran.out().contains("6 cases, "), ran.out());
  }

  @Test
  void a_page_whose_cases_pass_is_reported_by_id_or_by_file() {
    Ran id = run("", "try", "BOOK", "band-too-long");
    assertEquals(0, id.code());
    assertTrue(id.out().matches("\\d+ cases, all hold.\n"), id.out());
    Ran file = run("", "try", "BOOK", "sports-bra/band/band-too-long.md");
    assertEquals(0, file.code());
    assertEquals(id.out(), file.out());
  }

  @Test
  void a_post_is_read_and_answered_from_quotes_a_file_or_standard_input() throws Exception {
    String post = "My band wanders skyward behind. What now?";
    book.put(
        "everyday/sayings/band.yaml",
        "  band-rides-up-at-the-back:\n",
        "  band-rides-up-at-the-back:\n  - band wanders skyward\n");
    Ran quoted = run("", "try", "BOOK", post);
    assertEquals(0, quoted.code(), quoted.err());
    assertTrue(quoted.out().contains("by the phrase \"band wanders skyward\""), quoted.out());
    assertTrue(quoted.out().contains(" band-too-long\n"), quoted.out());
    assertEquals(quoted.out(), run(post, "try", "BOOK", "-").out());
    Path file = Files.writeString(folder.resolve("post.txt"), post);
    assertEquals(quoted.out(), run("", "try", "BOOK", file.toString()).out());
    Ran other = run("", "try", "BOOK", "What is for dinner tonight?");
    assertEquals(1, other.code());
    assertTrue(other.out().contains("question about the fit"), other.out());
  }

  @Test
  void a_page_that_is_not_there_is_answered_with_the_nearest() {
    Ran ran = run("", "try", "BOOK", "band-to-long");
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("\"band-too-long\""), ran.err());
  }

  @Test
  void new_files_are_named_by_check_until_they_are_filled_in() {
    for (Rules.Kind kind : Rules.Kind.values()) {
      String topic = kind == Rules.Kind.caution ? "care" : "band";
      Ran begun = run("", "new", kind.name(), "an-invented-" + kind, "BOOK", "--topic", topic);
      assertEquals(0, begun.code(), begun.err());
    }
    Ran check = run("", "check", "BOOK");
    assertEquals(1, check.code());
    for (String file :
        List.of(
            "catalog/causes/band.yaml",
            "catalog/signs/band.yaml",
            "catalog/adjustments/band.yaml",
            "catalog/findings/band.yaml",
            "catalog/cautions/care.yaml",
            "sports-bra/band/an-invented-cause.dslr",
            "sports-bra/band/an-invented-cause.md",
            "sports-bra/findings/an-invented-finding.dslr",
            "sports-bra/findings/an-invented-finding.md",
            "sports-bra/cautions/an-invented-caution.dslr",
            "sports-bra/cautions/an-invented-caution.md")) {
      assertTrue(
          check.out().lines().anyMatch(l -> l.startsWith(file + ":") && l.contains("filled in")),
          file + "\n" + check.out());
    }
    assertFalse(
        check.out().lines().anyMatch(l -> !l.contains("filled in") && !l.endsWith("faults.")),
        check.out());
  }

  @Test
  void existing_files_are_not_overwritten_and_mistakes_are_reported() {
    String before = book.text("catalog/causes/band.yaml");
    Ran there = run("", "new", "cause", "band-too-long", "BOOK", "--topic", "band");
    assertEquals(2, there.code());
    assertTrue(there.err().contains("catalog/causes/band.yaml"), there.err());
    assertEquals(2, run("", "new", "cause", "Band Too Wide", "BOOK").code());
    Ran topic = run("", "new", "cause", "band-too-wide", "BOOK", "--topic", "bands");
    assertEquals(2, topic.code());
    assertTrue(topic.err().contains("\"band\""), topic.err());
    assertEquals(before, book.text("catalog/causes/band.yaml"));
  }
}
