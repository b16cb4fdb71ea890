package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Reads posts of our own writing, by several hands and in several styles, labelled by hand. Those
 * in {@code posts} were read while the words were chosen; those in {@code posts-later} were counted
 * unseen, then looked at; those in {@code posts-aside} were not looked at, and only they tell how
 * strangers' posts are read. Labels are common practice of fitting.
 */
class PostsTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);

  private static PostsReport report(String folder) throws IOException {
    PostsReport report = new PostsReport(BOOK);
    for (LabelledPost post : LabelledPost.in(folder)) {
      report.add(post, INTAKE.read(post.text()));
    }
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", folder + ".md"), report.table());
    return report;
  }

  @Test
  void posts_the_words_were_chosen_with_are_read_as_a_teacher_reads_them() throws IOException {
    PostsReport report = report("posts");
    assertTrue(report.posts >= 100, "posts");
    assertAll(
        report.table(),
        () -> assertAtLeast(0.95, report.of("signs present").precision(), "signs, precision"),
        () -> assertAtLeast(0.90, report.of("signs present").recall(), "signs, recall"),
        () -> assertAtLeast(1, report.of("red flags").recall(), "red flags, recall"),
        () -> assertAtLeast(0.98, report.of("signs denied").precision(), "denials, precision"),
        () -> assertAtLeast(0.98, report.of("signs denied").recall(), "denials, recall"),
        () -> assertAtLeast(0.98, report.of("measurements").precision(), "units, precision"),
        () -> assertAtLeast(0.98, report.of("measurements").recall(), "units, recall"),
        () -> assertEquals(0, report.polarityWrong, "so taken for not so"));
  }

  @Test
  void posts_looked_at_later_are_read_no_worse_than_when_they_were() throws IOException {
    PostsReport report = report("posts-later");
    assertTrue(report.posts >= 50, "posts");
    assertAll(
        report.table(),
        () -> assertAtLeast(0.65, report.of("signs present").precision(), "signs, precision"),
        () -> assertAtLeast(0.75, report.of("signs present").recall(), "signs, recall"),
        () -> assertAtLeast(1, report.of("red flags").recall(), "red flags, recall"));
  }

  @Test
  void posts_kept_aside_are_reported_as_they_are_read() throws IOException {
    PostsReport report = report("posts-aside");
    assertTrue(report.posts >= 50, "posts");
    // Not a claim but a fence: worse than this and something broke.
    assertAll(
        report.table(),
        () -> assertAtLeast(0.55, report.of("signs present").precision(), "signs, precision"),
        () -> assertAtLeast(0.60, report.of("signs present").recall(), "signs, recall"));
  }

  @Test
  void a_post_about_something_else_is_no_fit_question() {
    for (String folder : List.of("posts", "posts-later", "posts-aside")) {
      for (LabelledPost post : LabelledPost.in(folder)) {
        if (!post.fit()) {
          assertFalse(INTAKE.read(post.text()).fitQuestion(), post.id());
        }
      }
    }
  }

  private static void assertAtLeast(double bound, double value, String what) {
    assertTrue(value >= bound, what + " " + value + " < " + bound);
  }
}
