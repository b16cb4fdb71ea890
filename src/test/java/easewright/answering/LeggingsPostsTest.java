package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.diagnosis.Answer;
import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Posts about leggings, which name them and are sent as text alone. Those in {@code posts-leggings}
 * were read while {@code rules/leggings/sayings.yaml} was written; those in {@code
 * posts-leggings-aside} were only counted. Labels are common practice of fitting. Writes {@code
 * target/leggings-posts.md}.
 */
class LeggingsPostsTest {
  private static final Edition EDITION = Edition.of(RuleBook.compiledIn(), new PatternSheets());

  @Test
  void posts_the_sayings_were_chosen_with_are_read_as_a_teacher_reads_them() throws IOException {
    CountedPosts view = new CountedPosts("posts-leggings/l1", EDITION);
    String report = view.report("in view");
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", "leggings-posts.md"), report);
    assertAll(
        report,
        () -> assertTrue(view.precision() >= 0.84, "signs, precision"),
        () -> assertTrue(view.recall() >= 0.86, "signs, recall"),
        () -> assertTrue(view.answers.first >= 23, "first causes"),
        () -> assertTrue(view.answers.advised >= 17, "first advice"),
        () -> assertEquals(0, view.answers.forbidden, "forbidden first advice"),
        () -> assertEquals(0, view.answers.clearWrong, "clear, and wrong"),
        () -> assertEquals(0, view.answers.stoppedWithoutOne, "stopped without a danger"),
        () -> assertEquals(0, view.answers.otherAnswered, "no fit question, and answered"),
        () -> assertEquals(view.answers.dangers, view.answers.dangersStopped, "dangers"));
  }

  /** A fence and no claim: worse than this, and something broke. */
  @Test
  void posts_kept_aside_are_reported_as_they_are_read() throws IOException {
    CountedPosts aside = new CountedPosts("posts-leggings-aside/l2", EDITION);
    String report = aside.report("kept aside");
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", "leggings-posts-aside.md"), report);
    assertAll(
        report,
        () -> assertTrue(aside.precision() >= 0.30, "signs, precision"),
        () -> assertTrue(aside.recall() >= 0.35, "signs, recall"),
        () -> assertEquals(0, aside.answers.forbidden, "forbidden first advice"),
        () -> assertEquals(aside.answers.dangers, aside.answers.dangersStopped, "dangers"));
  }

  /** Public health guidance (from memory): one calf that hurts, swells or is hot is seen today. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "My left calf is swollen since Friday. The leggings slide down too.",
        "The leggings slide down. My calf is hot and sore.",
        "My leggings slide down, and one leg has been throbbing and red since the flight.",
        "My calf has gone hard and it hurts to walk. How do I let out the leggings?",
        "My thigh is swollen and painful, should I let out the leggings?",
      })
  void a_leg_that_hurts_or_swells_stops_the_fitting(String text) {
    assertTrue(answer(text).isDanger(), text);
  }

  /** Common practice: so writers speak of leggings, not of their legs. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "The leggings are tight round my calves.",
        "My leggings feel stiff and too hard over the knee.",
        "The leggings slide down. They went off like a gunshot at the crotch seam.",
        "The leggings slide down. My calves are bigger than average and they get stuck there.",
      })
  void leggings_that_are_tight_on_a_leg_stop_nothing(String text) {
    assertFalse(answer(text).isDanger(), text);
  }

  private static Answer answer(String text) {
    return EDITION.answer(JsonNodeFactory.instance.objectNode().put("text", text));
  }
}
