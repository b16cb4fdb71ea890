package easewright.book;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toSet;
import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.diagnosis.Answer;
import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Every cause against all others, by its typical pictures. To come first in an answer a cause must
 * be worth mentioning, so these tests show besides that every cause can be reached.
 */
class TypicalPicturesTest {
  private static final RuleBookSource SOURCE = Consulting.BOOK.source();
  private static final Map<String, Map<String, Double>> SIGNS_OF =
      TypicalPictures.signsOfEveryCause();

  @Test
  void every_cause_comes_first_when_its_typical_signs_are_seen() {
    Failures failures = new Failures();
    forEveryPicture(
        (cause, picture) -> {
          Answer answer = Consulting.answerToSigns(picture);
          List<String> causes = Consulting.causes(answer);
          failures.unless(!causes.isEmpty() && causes.get(0).equals(cause), cause, picture, answer);
        });
    failures.report();
  }

  @Test
  void every_cause_stays_among_the_first_three_when_one_typical_sign_is_not_mentioned() {
    Failures failures = new Failures();
    forEveryPicture(
        (cause, picture) -> {
          for (String left : picture) {
            List<String> rest = picture.stream().filter(sign -> !sign.equals(left)).toList();
            Answer answer = Consulting.answerToSigns(rest);
            List<String> causes = Consulting.causes(answer);
            failures.unless(causes.stream().limit(3).anyMatch(cause::equals), cause, rest, answer);
          }
        });
    failures.report();
  }

  @Test
  void every_cause_stays_first_when_a_sign_often_seen_with_nothing_wrong_is_mentioned_besides() {
    List<String> everyday =
        SOURCE.catalog().signs().values().stream()
            .filter(sign -> !sign.redFlag() && sign.withoutFault().equals("often"))
            .map(SignEntry::id)
            .toList();
    Failures failures = new Failures();
    forEveryPicture(
        (cause, picture) -> {
          for (String harmless : everyday) {
            Set<String> more = new TreeSet<>(picture);
            if (more.add(harmless)) {
              Answer answer = Consulting.answerToSigns(more);
              boolean first = Consulting.causes(answer).stream().limit(1).anyMatch(cause::equals);
              failures.unless(first, cause, List.copyOf(more), answer);
            }
          }
        });
    failures.report();
  }

  /** Only causes with no sign in common: others may explain each other's signs away. */
  @Test
  void two_unrelated_causes_are_both_among_the_first_three_when_the_signs_of_both_are_seen() {
    Failures failures = new Failures();
    List<String> causes = List.copyOf(SIGNS_OF.keySet());
    for (String one : causes) {
      for (String other : causes) {
        if (one.compareTo(other) < 0
            && Collections.disjoint(SIGNS_OF.get(one).keySet(), SIGNS_OF.get(other).keySet())) {
          Set<String> both = new TreeSet<>(TypicalPictures.of(SIGNS_OF.get(one)).get(0));
          both.addAll(TypicalPictures.of(SIGNS_OF.get(other)).get(0));
          Answer answer = Consulting.answerToSigns(both);
          List<String> firstThree = Consulting.causes(answer).stream().limit(3).toList();
          failures.unless(
              firstThree.containsAll(List.of(one, other)),
              one + " with " + other,
              List.copyOf(both),
              answer);
        }
      }
    }
    failures.report();
  }

  @Test
  void every_cause_has_a_typical_picture_of_at_least_three_signs() {
    List<String> poor =
        SOURCE.catalog().causes().keySet().stream()
            .filter(cause -> SIGNS_OF.getOrDefault(cause, Map.of()).size() < 3)
            .toList();

    assertEquals(List.of(), poor);
  }

  @Test
  void no_two_causes_show_the_same_signs_equally_often_unless_the_catalog_says_so() {
    List<String> alike = new ArrayList<>();
    List<String> causes = List.copyOf(SOURCE.catalog().causes().keySet());
    for (String one : causes) {
      for (String other : causes) {
        if (one.compareTo(other) < 0
            && SIGNS_OF.get(one).equals(SIGNS_OF.get(other))
            && !declaredAlike(one, other)) {
          alike.add(one + " and " + other);
        }
      }
    }
    assertEquals(List.of(), alike);
  }

  @Test
  void no_two_causes_have_one_set_of_typical_signs() {
    Map<Set<String>, List<String>> byPicture =
        SIGNS_OF.keySet().stream()
            .collect(
                groupingBy(
                    cause ->
                        TypicalPictures.of(SIGNS_OF.get(cause)).get(0).stream().collect(toSet())));

    assertEquals(
        List.of(), byPicture.values().stream().filter(causes -> causes.size() > 1).toList());
  }

  private static boolean declaredAlike(String one, String other) {
    CauseEntry entry = SOURCE.catalog().causes().get(one);
    return entry.indistinguishableFrom() != null && entry.indistinguishableFrom().contains(other);
  }

  private interface PictureCheck {
    void check(String cause, List<String> picture);
  }

  private static void forEveryPicture(PictureCheck check) {
    SIGNS_OF.forEach(
        (cause, signs) ->
            TypicalPictures.of(signs).forEach(picture -> check.check(cause, picture)));
  }

  /** Gathered, so that one run shows every cause in need of mending. */
  private static final class Failures {
    private final List<String> found = new ArrayList<>();
    private int checked;

    void unless(boolean so, String cause, List<String> picture, Answer answer) {
      checked++;
      if (!so) {
        found.add(cause + " by " + picture + ": " + Consulting.leading(answer));
      }
    }

    void report() {
      assertEquals(
          "", String.join("\n", found), found.size() + " of " + checked + " pictures fail");
    }
  }
}
