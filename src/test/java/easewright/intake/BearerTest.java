package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Of whom a danger is said (common practice in reading posts). */
class BearerTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);

  private static Set<String> dangers(String text) {
    return INTAKE.read(text).signs().stream()
        .filter(SignRead::present)
        .map(SignRead::id)
        .filter(id -> BOOK.catalog().signs().get(id).redFlag())
        .collect(Collectors.toSet());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "The seam is rather lumpy.",
        "I think the hem is a bit lumpy.",
        "The foam feels dead.",
        "The thread went through the cloth like a knife.",
        "It leaves no welts and no rash.",
        "No blisters and no rash.",
        "There is a lump where the lining is joined.",
        "The print took my breath away.",
        "My feet are numb from the pedal.",
        "The left strap came out larger than the right."
      })
  void what_is_said_of_a_thing_stops_nobody(String text) {
    assertEquals(Set.of(), dangers(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "The elastic leaves a rash.",
        "The seam makes me dizzy.",
        "There is a lump under the elastic.",
        "There is a lump in my breast where the seam sits.",
        "Numb after ten minutes.",
        "The band takes my breath away.",
        "The lace rubs raw and bleeds.",
        "The elastic cuts off the blood and my hand feels dead.",
        "The cups used to match, suddenly one is larger than the other."
      })
  void what_is_said_of_a_wearer_stops_whatever_is_named_beside_it(String text) {
    assertFalse(dangers(text).isEmpty());
  }

  @Test
  void what_is_not_plain_is_for_a_person_to_read() {
    assertFalse(
        INTAKE.read("There is a lump where the elastic is joined.").readYourself().isEmpty());
    assertFalse(INTAKE.read("My feet are numb from the pedal.").readYourself().isEmpty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "My machine had surgery last week.",
        "My cat had an operation.",
        "After a pregnant pause I cut it out.",
        "I was nursing a mug of coffee.",
        "The parcel is due in May.",
        "I pumped up the ball."
      })
  void what_befell_a_thing_is_no_circumstance(String text) {
    assertEquals(
        List.of(), INTAKE.read(text).circumstances().stream().map(TextRead::value).toList());
  }
}
