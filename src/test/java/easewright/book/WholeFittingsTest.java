package easewright.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.diagnosis.Answer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Counts whole fittings of several writers. The rule book was read and mended with those in {@code
 * fittings} in view; those in {@code fittings-aside} are only counted. Expectations are common
 * practice, each writer's own.
 */
class WholeFittingsTest {
  @Test
  void the_fittings_in_view_are_answered_as_their_writers_expect() throws IOException {
    FittingsScore running = score("/fittings/running.yaml");
    FittingsScore everyday = score("/fittings/everyday.yaml");
    for (FittingsScore score : List.of(running, everyday)) {
      assertAtLeast(58, score.first(), "first cause");
      assertAtLeast(56, score.advised(), "first advice");
      assertAtLeast(score.withAmount() - 1, score.amounts(), "amounts");
      assertEquals(0, score.forbidden(), "first advice that a teacher would forbid");
    }
    FittingsScore softTops = score("/fittings/soft-tops.yaml");
    assertAtLeast(29, softTops.first(), "first cause");
    assertAtLeast(28, softTops.advised(), "first advice");
    assertEquals(softTops.withAmount(), softTops.amounts(), "amounts");
    assertEquals(0, softTops.forbidden(), "first advice that a teacher would forbid");
    FittingsScore sixth = score("/fittings/sixth.yaml");
    assertAtLeast(39, sixth.first(), "first cause");
    assertAtLeast(39, sixth.advised(), "first advice");
    assertAtLeast(sixth.withAmount() - 1, sixth.amounts(), "amounts");
    assertEquals(0, sixth.forbidden(), "first advice that a teacher would forbid");
    for (FittingsScore numbers :
        List.of(score("/fittings/eighth.yaml"), score("/fittings/number-shapes.yaml"))) {
      assertEquals(numbers.count(), numbers.first(), "first cause");
      assertEquals(numbers.count(), numbers.advised(), "first advice");
      assertEquals(numbers.withAmount(), numbers.amounts(), "amounts");
      assertEquals(0, numbers.forbidden(), "first advice that a teacher would forbid");
    }
  }

  /** Nobody may choose a rule or a number by these: the report has sums and no case. */
  @Test
  void the_fittings_kept_aside_are_counted() throws IOException {
    FittingsScore aside = score("/fittings-aside/alterations.yaml");
    assertAtLeast(57, aside.first(), "first cause");
    assertAtLeast(54, aside.advised(), "first advice");
    assertAtLeast(aside.withAmount() - 1, aside.amounts(), "amounts");
    assertEquals(0, aside.forbidden(), "first advice that a teacher would forbid");
    FittingsScore later = score("/fittings-aside/later.yaml");
    assertAtLeast(27, later.first(), "first cause");
    assertAtLeast(25, later.advised(), "first advice");
    assertAtLeast(later.withAmount() - 1, later.amounts(), "amounts");
    assertEquals(0, later.forbidden(), "first advice that a teacher would forbid");
    FittingsScore seventh = score("/fittings-aside/seventh.yaml");
    assertAtLeast(38, seventh.first(), "first cause");
    assertAtLeast(37, seventh.advised(), "first advice");
    assertAtLeast(23, seventh.amounts(), "amounts");
    assertEquals(0, seventh.forbidden(), "first advice that a teacher would forbid");
    FittingsScore ninth = score("/fittings-aside/ninth.yaml");
    assertAtLeast(48, ninth.first(), "first cause");
    assertAtLeast(47, ninth.advised(), "first advice");
    assertAtLeast(34, ninth.amounts(), "amounts");
    assertEquals(0, ninth.forbidden(), "first advice that a teacher would forbid");
  }

  private static void assertAtLeast(long least, long count, String what) {
    assertTrue(count >= least, what + ": " + count + " of at least " + least);
  }

  private static FittingsScore score(String file) throws IOException {
    Map<WholeFitting, Answer> answers = new LinkedHashMap<>();
    List<WholeFitting> fittings = WholeFitting.of(file);
    fittings.forEach(one -> answers.put(one, Consulting.answer(one.request())));
    FittingsScore score = new FittingsScore(answers);
    String name = file.substring(1).replace('/', '-').replace(".yaml", ".md");
    Files.writeString(Path.of("target", name), score.report(!file.contains("-aside")));
    return score;
  }
}
