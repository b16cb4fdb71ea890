package easewright.naming;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.rulebook.RuleBookSource;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a writer most likely meant is what shares her words (common practice). */
class NearestNameTest {
  private static final Set<String> SIGNS =
      RuleBookSource.read(Path.of("rules")).catalog().signs().keySet();

  @ParameterizedTest
  @CsvSource({
    "band-rides-upp, band-rides-up-at-the-back",
    "band rides up, band-rides-up-at-the-back",
    "strap-slip-off, straps-slip-off",
    "straps-slips-off, straps-slip-off",
    "neckline-gaps, neckline-gapes",
    "neckline gape, neckline-gapes",
    "band-dig-in, band-digs-in",
    "band-rols-at-the-upper-edge, band-rolls-at-the-upper-edge",
    "front-armholes-gape, front-armhole-gapes",
  })
  void the_sign_with_the_same_words_is_offered(String written, String meant) {
    assertEquals(Optional.of(meant), NearestName.to(written, SIGNS));
  }

  /** With as many words in common the fewer edits decide; "in" is no slip of "on". */
  @Test
  void letters_decide_between_as_many_words() {
    assertEquals(
        Optional.of("straps-dig-in"),
        NearestName.to("straps-dig-im", List.of("straps-dig-on", "straps-dig-in")));
    assertEquals(Optional.of("signs"), NearestName.to("sings", List.of("size", "signs")));
    assertEquals(Optional.empty(), NearestName.to("purple", List.of("size", "signs")));
  }
}
