package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheets;
import easewright.rulebook.BookCopy;
import easewright.rulebook.check.BookProblem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Loading a book reports all its faults by file, line and remedy. */
@Tag("long")
class OwnBookTest {
  /** Each checks the whole book, which takes some ten seconds. */
  private static final int TRIES = 8;

  private static final OwnBook OWN = new OwnBook(new PatternSheets());

  private static final String BAND = "sports-bra/band/band-too-long";
  private static final String SLACK = "sports-bra/findings/band-slack-by-measure";
  private static final String SIGNS = "catalog/signs/band.yaml";
  private static final String CAUSES = "catalog/causes/band.yaml";
  private static final String CHANGES = "catalog/adjustments/band.yaml";
  private static final String FINDINGS = "catalog/findings/band.yaml";
  private static final String SAYINGS = "everyday/sayings/band.yaml";
  private static final String WORDS = "everyday/words.yaml";
  private static final String NUMBERS = "everyday/numbers.yaml";
  private static final String GRAMMAR = "everyday/grammar.yaml";

  @TempDir Path folder;

  /** A mistake, its location, and the report about it. */
  private record Mistake(String location, String problem, String remedy) {}

  private final List<Mistake> mistakes = new ArrayList<>();

  private void mistake(
      BookCopy book, String file, String old, String now, String problem, String remedy) {
    mistakes.add(new Mistake(file + ":" + book.put(file, old, now), problem, remedy));
  }

  @Test
  void the_projects_book_is_sound() {
    assertEquals(List.of(), OWN.problems(Path.of("rules")));
  }

  @Test
  void every_mistake_is_reported_at_once_with_file_line_and_remedy() {
    BookCopy book = BookCopy.in(folder);
    mistake(
        book,
        BAND + ".dslr",
        "shows as \"band rides up at the back\"",
        "shows as \"band ride up at the back\"",
        "no sign or finding",
        "band-rides-up-at-the-back");
    mistake(
        book,
        BAND + ".dslr",
        "in any fitting\nthen",
        "in any fittings\nthen",
        "no sentence",
        "in any fitting");
    mistake(
        book,
        SLACK + ".dslr",
        "\"slack band length\"",
        "\"slak band length\"",
        "no parameter",
        "slack-band-length");
    mistake(
        book,
        SLACK + ".dslr",
        "\"band length excess\" is at least",
        "\"band lenth excess\" is at least",
        "no figure",
        "band-length-excess");
    mistake(
        book,
        SLACK + ".md",
        "holds not: band-slack-by-measure",
        "holds not: band-slack-by-measures",
        "no finding",
        "band-slack-by-measure");
    mistake(
        book,
        "common/health/growing-wearer.dslr",
        "is \"growing\"",
        "is \"growin\"",
        "no circumstance",
        "growing");
    mistake(
        book,
        "common/health/growing-wearer.dslr",
        "\"it will soon be outgrown\"",
        "\"it will soon be outgrow\"",
        "no reason",
        "it-will-soon-be-outgrown");
    mistake(
        book,
        "sports-bra/edges/neckline-cut-too-high.dslr",
        "is \"high\"",
        "is \"hihg\"",
        "no option of this choice",
        "high");
    mistake(
        book,
        "common/health/looser-for-all-day-wear.dslr",
        "  show the caution \"looser for all day wear\"\n  advise no tightening",
        "  advise no tightening",
        "stops all tightening unnamed",
        "show the caution");
    mistake(book, SIGNS, "effort: glance", "effort: glanze", "\"glanze\" is not known", "glance");
    mistake(
        book,
        SIGNS,
        "look: [standing, arms raised, running]",
        "look: [standin, arms raised]",
        "\"standin\" is not known",
        "standing");
    mistake(
        book,
        SIGNS,
        "withoutFault: sometimes",
        "withoutFalt: sometimes",
        "no field of this place",
        "withoutFault");
    mistake(
        book,
        CAUSES,
        "prior: fairly common",
        "prior: fairly comon",
        "\"fairly comon\" is not known",
        "common");
    mistake(book, CAUSES, "stage: band", "stage: bend", "no stage of the order of work", "band");
    mistake(
        book,
        CAUSES,
        "straps-too-short, back-too-short",
        "straps-to-short, back-too-short",
        "no cause",
        "straps-too-short");
    mistake(
        book,
        CHANGES,
        "method: band take-in",
        "method: band takein",
        "\"band takein\" is not known",
        "band take-in");
    mistake(book, CHANGES, "undo: unpick", "undo: unpic", "\"unpic\" is not known", "unpick");
    mistake(
        book,
        CHANGES,
        "limit: largest-change-of-the-band",
        "limit: largest-change-of-a-band",
        "no parameter",
        "largest-change-of-the-band");
    mistake(book, CHANGES, "slight: 10 mm", "slight: ten", "\"ten\" is no length", "10 mm");
    mistake(
        book,
        FINDINGS,
        "figure: band-length-excess",
        "figure: band-strains",
        "no figure",
        "band-strain");
    mistake(
        book,
        SAYINGS,
        "  band-rides-up-at-the-back:",
        "  band-rides-up-at-back:",
        "no sign",
        "band-rides-up-at-the-back");
    mistake(
        book,
        WORDS,
        "  take-in-the-band:",
        "  take-in-a-band:",
        "no adjustment",
        "take-in-the-band");
    mistake(book, WORDS, "weak: [high,", "weak: [hihg,", "no idea", "high");
    mistake(
        book, WORDS, "alone: [slips on easily,", "alone: [slip on easily,", "no idea", "slips on");
    mistake(
        book,
        "parameters/edges.yaml",
        "since: 2026-11",
        "sinse: 2026-11",
        "no field of this place",
        "since");
    practice(book);
    reader(book);
    mistake(
        book,
        "sports-bra/family.yaml",
        "usual: true",
        "usualy: true",
        "no field of this place",
        "usual");
    mistakes.add(new Mistake("family.yaml", "No family serves requests", "usual: true"));
    book.delete("sports-bra/band/band-too-short.dslr");
    mistakes.add(
        new Mistake(
            CAUSES + ":" + book.line(CAUSES, "id: band-too-short"), "has no rule file", ".dslr"));
    List<BookProblem> problems = OWN.problems(folder);
    for (Mistake mistake : mistakes) {
      assertTrue(
          problems.stream()
              .map(BookProblem::text)
              .anyMatch(
                  text ->
                      text.startsWith(mistake.location() + ": ")
                          && text.contains(mistake.problem())
                          && text.contains(mistake.remedy())),
          () -> mistake + " is not among\n" + String.join("\n", texts(problems)));
    }
  }

  private void practice(BookCopy book) {
    mistake(
        book, "practice/order.yaml", "- id: stop", "- id: halt", "\"halt\" is not known", "stop");
    mistake(
        book,
        "practice/traits.yaml",
        "without: [{line: shaped-seam}]",
        "without: [{lyne: shaped-seam}]",
        "no field of this place",
        "line");
    mistake(
        book,
        "practice/circumstances.yaml",
        "- id: hurt-ribs\n  name: hurt ribs",
        "- id: sore-ribs\n  name: sore ribs",
        "no circumstance that requests can say",
        "hurt-ribs");
    mistake(
        book,
        "sports-bra/measures.yaml",
        "least: 450 mm",
        "least: 1.9 m",
        "not written as it should be",
        "500 mm");
    mistake(
        book,
        "sports-bra/measures.yaml",
        "low: 63 mm",
        "low: 230 mm",
        "\"low\" is not below \"high\"",
        "smaller of the two first");
    mistake(
        book,
        "sports-bra/measures.yaml",
        "first: upperChest",
        "first: upperchesst",
        "no measurement of the body",
        "upperChest");
    mistake(
        book,
        "sports-bra/measures.yaml",
        "of: [bust, bustLeft, bustRight]",
        "of: [bust, bustLeft, bustRite]",
        "no measurement of the body",
        "bustRight");
    mistake(
        book,
        "sports-bra/measures.yaml",
        "most: widest-strap",
        "most: widest-strapp",
        "no parameter",
        "widest-strap");
    mistake(
        book,
        "sports-bra/measures.yaml",
        "garment: [underband]",
        "garment: [underbust]",
        "no measurement of the garment",
        "underband");
    mistake(
        book,
        "sports-bra/measures.yaml",
        "edges: [neckline, back-neckline",
        "edges: [neckline, back-nekline",
        "no edge that requests can name",
        "back-neckline");
    mistake(
        book,
        "practice/sizing.yaml",
        "take: larger",
        "take: smaller",
        "asks for room",
        "take: larger");
    mistake(
        book,
        "practice/sizing.yaml",
        "says: size-between-shaped",
        "says: size-betwixt-shaped",
        "no sentence",
        "size-between-shaped");
    mistake(
        book,
        "sports-bra/drawings.yaml",
        "  neckline-gapes: [neckline-stands-off]",
        "  neckline-gapes: [neckline-stands-of]",
        "neckline-stands-of",
        "neckline-stands-off");
    mistake(
        book, "practice/sewing.yaml", "heavy: true", "heavy: sometimes", "boolean", "heavy cloth");
  }

  /** The reader's own word lists: names, shapes, numbers, repetitions. */
  private void reader(BookCopy book) {
    mistake(
        book,
        NUMBERS,
        "  tens in words:",
        "  tens in word:",
        "no list of the reader",
        "tens in words");
    mistake(book, NUMBERS, "twelve as 12", "twelve as dozen", "not written as it", "twelve as 12");
    mistake(
        book, NUMBERS, "wks as week", "wks as fortnight", "not written as it", "week, month or");
    mistake(
        book, NUMBERS, "half a as 0.5", "half a 0.5", "not written as it should", "half a as 0.5");
    mistake(book, NUMBERS, "ranges: [to, or, till", "ranges: [to, or, or", "unique", "each once");
    mistake(book, NUMBERS, "girls are: [is,", "girls are: [\"\",", "1 character", "not empty");
    mistake(
        book, GRAMMAR, "  past tenses:", "  past tenzes:", "no list of the reader", "past tenses");
    mistake(book, GRAMMAR, "taken as took", "taken was took", "not written as it", "taken as took");
    mistake(book, GRAMMAR, "MEDIUM as M", "MEDIUM as", "not written as it", "MEDIUM as M");
    mistake(
        book,
        GRAMMAR,
        "particles: [in, out, up, down, \"off\", apart]",
        "particles: []",
        "1 item",
        "one at least");
  }

  @Test
  void a_list_of_the_reader_that_is_missing_is_named() {
    BookCopy book = BookCopy.in(folder);
    book.put(NUMBERS, "  units of time: [", "  # units of time: [");
    onlyProblem("everyday: ", "units of time");
  }

  /** Without it, figures that rules judge would silently have no value. */
  @Test
  void a_measurement_that_figures_are_computed_from_is_missed() {
    BookCopy book = BookCopy.in(folder);
    book.put("sports-bra/measures.yaml", "- id: shoulderToBustPoint", "- id: shoulderToBust");
    assertTrue(names("The measurement shoulderToBustPoint is missing"));
    book.delete("sports-bra/measures.yaml");
    assertTrue(names("The file is missing, and figures are computed from what it measures."));
  }

  private boolean names(String problem) {
    return OWN.problems(folder).stream()
        .anyMatch(
            one ->
                one.file().equals("sports-bra/measures.yaml") && one.problem().startsWith(problem));
  }

  @Test
  void a_file_of_the_practice_that_is_missing_is_named() {
    BookCopy book = BookCopy.in(folder);
    book.delete("practice/sewing.yaml");
    onlyProblem("practice/sewing.yaml: ", "missing");
  }

  /** Whichever line is lost, the check reports it or the book can still be read. */
  @Test
  void a_lost_line_never_keeps_the_check_from_answering() throws IOException {
    BookCopy book = BookCopy.in(folder);
    List<String> files;
    try (Stream<Path> walk = Files.walk(folder)) {
      files =
          walk.map(file -> folder.relativize(file).toString())
              .filter(file -> file.matches(".*[.](yaml|dslr|dsl|md)"))
              .sorted()
              .toList();
    }
    Random random = new Random(1);
    int told = 0;
    for (int tries = 0; tries < TRIES; tries++) {
      String file = files.get(random.nextInt(files.size()));
      String sound = book.text(file);
      List<String> lines = new ArrayList<>(sound.lines().toList());
      String lost = lines.remove(random.nextInt(lines.size()));
      book.write(file, String.join("\n", lines) + "\n");
      List<BookProblem> problems = OWN.problems(folder);
      assertTrue(
          problems.stream().noneMatch(one -> one.problem().startsWith("It cannot be used")),
          () -> file + " without " + lost + ": " + texts(problems));
      told += problems.isEmpty() ? 0 : 1;
      book.write(file, sound);
    }
    assertTrue(told > 0, "told of " + told);
  }

  private static List<String> texts(List<BookProblem> problems) {
    return problems.stream().map(BookProblem::text).toList();
  }

  private void onlyProblem(String begins, String holds) {
    List<String> texts = texts(OWN.problems(folder));
    assertEquals(1, texts.size(), texts::toString);
    assertTrue(texts.get(0).startsWith(begins), texts::toString);
    assertTrue(texts.get(0).contains(holds), texts::toString);
  }

  @Test
  void a_fitting_of_a_case_that_the_service_would_refuse_is_named_with_its_heading() {
    BookCopy book = BookCopy.in(folder);
    book.put(SLACK + ".md", "underband: 73 cm", "underband: 73");
    onlyProblem(SLACK + ".md:", "Twenty millimetres");
  }

  @Test
  void a_file_that_is_no_yaml_is_named_by_its_line() {
    BookCopy book = BookCopy.in(folder);
    int line = book.put("catalog/reasons/band.yaml", "says: At rest", "says: \"At rest");
    List<String> texts = texts(OWN.problems(folder));
    assertTrue(
        texts.stream().anyMatch(text -> text.startsWith("catalog/reasons/band.yaml:")),
        texts::toString);
    assertTrue(line > 0);
  }

  @Test
  void a_number_the_computing_needs_is_missed_before_any_request_needs_it() {
    BookCopy book = BookCopy.in(folder);
    book.put("parameters/words.yaml", "- id: worth-mentioning", "- id: worth-a-mention");
    onlyProblem("parameters: ", "worth-mentioning");
  }

  @Test
  void a_missing_sentence_is_reported_before_any_request_needs_it() {
    BookCopy book = BookCopy.in(folder);
    book.put("wording.yaml", "figure-band-length-excess:", "figure-band-length-exces:");
    onlyProblem("wording.yaml: ", "figure-band-length-excess");
  }

  @Test
  void what_is_not_filled_in_yet_is_named_by_what_is_to_be_written() {
    BookCopy book = BookCopy.in(folder);
    int line = book.put(CAUSES, "prior: very common", "prior: \"??? How common it is.\"");
    onlyProblem(CAUSES + ":" + line + ": ", "How common it is.");
  }

  @Test
  void a_broken_book_is_not_loaded_and_a_folder_without_one_neither() {
    BookCopy book = BookCopy.in(folder);
    book.put(BAND + ".dslr", "\"band rides up at the back\"", "\"band rides up\"");
    BrokenBook broken = assertThrows(BrokenBook.class, () -> OWN.load(folder));
    assertTrue(broken.getMessage().contains(BAND + ".dslr:"), broken.getMessage());
    assertThrows(BrokenBook.class, () -> OWN.load(folder.resolve("nowhere")));
  }
}
