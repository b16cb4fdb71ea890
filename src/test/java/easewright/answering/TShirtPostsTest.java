package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Posts about T-shirts, sent as text alone; {@code rules/t-shirt/sayings.yaml} was written with
 * them in view. Labels are common practice of fitting. Writes {@code target/t-shirt-posts.md}.
 */
class TShirtPostsTest {
  private static final Edition EDITION = Edition.of(RuleBook.compiledIn(), new PatternSheets());

  @Test
  void posts_the_sayings_were_chosen_with_are_read_as_a_teacher_reads_them() throws IOException {
    CountedPosts view = new CountedPosts("posts-t-shirt/t1", EDITION);
    String report = view.report("in view");
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", "t-shirt-posts.md"), report);
    assertAll(
        report,
        () -> assertTrue(view.precision() >= 0.84, "signs, precision"),
        () -> assertTrue(view.recall() >= 0.82, "signs, recall"),
        () -> assertTrue(view.answers.first >= 20, "first causes"),
        () -> assertTrue(view.answers.advised >= 18, "first advice"),
        () -> assertEquals(0, view.answers.forbidden, "forbidden first advice"),
        () -> assertEquals(0, view.answers.clearWrong, "clear, and wrong"),
        () -> assertEquals(0, view.answers.stoppedWithoutOne, "stopped without a danger"),
        () -> assertEquals(0, view.answers.otherAnswered, "no fit question, and answered"),
        () -> assertEquals(view.answers.dangers, view.answers.dangersStopped, "dangers"));
  }

  /** Common sense: a T-shirt is sewn, and it is also worn over a bra; without a name, a bra. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "My T-shirt is tight across the bust.|t-shirt",
        "I sewed a tee and the neckline gapes.|t-shirt",
        "The armholes of this fitted t shirt cut under the arm.|t-shirt",
        "The band rides up and you can see it under a T-shirt.|sports-bra",
        "The armhole gapes, I can see it through my T-shirt, and the straps slip.|sports-bra",
        "My sports bra is made from two old T-shirts and the neckline gapes.|sports-bra",
        "The neckline gapes.|sports-bra",
      })
  void a_text_is_about_the_garment_that_was_sewn(String text, String family) {
    assertEquals(
        family,
        EDITION
            .answer(JsonNodeFactory.instance.objectNode().put("text", text))
            .understood()
            .family());
  }
}
