package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * Reads dangers as four hands told of them who never saw the project, and a fifth who did. Those in
 * {@code dangers} were read while the words were chosen; those in {@code dangers-aside}, a third of
 * two hands and all of the third, never, and only they tell how strangers' words are read. What is
 * a danger follows public health advice on when to seek help, which each sign names as its source.
 */
class DangersTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);

  private static DangersReport report(String folder, boolean showMisses) throws IOException {
    DangersReport report = DangersReport.of(BOOK, INTAKE, folder, showMisses);
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", folder + ".md"), report.table());
    return report;
  }

  @Test
  void dangers_told_in_passing_stop_and_words_that_only_sound_like_it_do_not() throws IOException {
    DangersReport report = report("dangers", true);
    assertAll(
        report.table(),
        () -> assertTrue(report.stopRecall() >= 1, "stop " + report.stopRecall()),
        () ->
            assertTrue(
                report.circumstanceRecall() >= 1, "circumstances " + report.circumstanceRecall()),
        () -> assertTrue(report.stopOrLookRecall() >= 1, "stop or look"),
        () -> assertTrue(report.harmlessStopped <= 0, "harmless stopped"),
        () -> assertTrue(report.harmlessFlagged <= 0.15 * report.harmless, "harmless to look at"));
  }

  /** The half of a fifth hand's pairs by which no word was chosen: true dangers and their twins. */
  @Test
  void dangers_and_their_harmless_twins_that_no_word_was_chosen_by() throws IOException {
    DangersReport report = report("dangers-counted", false);
    // A fence as well: 20 of 22 stop by the words alone, and 8 of 22 twins.
    assertAll(
        report.table(),
        () -> assertTrue(report.stopRecall() >= 0.9, "stop " + report.stopRecall()),
        () -> assertTrue(report.harmlessStopped <= 8, "harmless " + report.harmlessStopped));
  }

  @Test
  void dangers_told_by_hands_kept_aside_are_reported_as_they_are_read() throws IOException {
    DangersReport report = report("dangers-aside", false);
    // Not a claim but a fence: worse than this and something broke.
    assertAll(
        report.table(),
        () -> assertTrue(report.stopRecall() >= 0.78, "stop " + report.stopRecall()),
        () -> assertTrue(report.stopOrLookRecall() >= 0.84, "look " + report.stopOrLookRecall()));
  }
}
