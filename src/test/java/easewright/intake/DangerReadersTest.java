package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.intake.Reading.SignRead;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Any reader of dangers can raise one, and none can take it away (common practice of safety). */
class DangerReadersTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake ALONE = new Intake(BOOK);

  private static DangerReader finding(String... signs) {
    return new DangerReader() {
      @Override
      public String name() {
        return "stub";
      }

      @Override
      public List<Danger> in(Post post) {
        return List.of(signs).stream()
            .map(sign -> new Danger(sign, post.span(0, 0), "stub", name(), 0.7))
            .toList();
      }
    };
  }

  private static Set<String> present(Intake intake, String text) {
    return intake.read(text).signs().stream()
        .filter(SignRead::present)
        .map(SignRead::id)
        .collect(Collectors.toSet());
  }

  @Test
  void a_second_reader_raises_what_the_words_did_not_find() {
    String text = "The band rides up at the back.";
    assertEquals(Set.of("band-rides-up-at-the-back"), present(ALONE, text));
    assertEquals(
        Set.of("band-rides-up-at-the-back", "fainted-or-blacked-out"),
        present(new Intake(BOOK, List.of(finding("fainted-or-blacked-out"))), text));
  }

  @Test
  void a_second_reader_that_finds_nothing_takes_nothing_away() {
    String text = "The band rides up and I fainted in it.";
    assertTrue(present(ALONE, text).contains("fainted-or-blacked-out"));
    assertEquals(present(ALONE, text), present(new Intake(BOOK, List.of(finding())), text));
  }

  @Test
  void what_one_reader_raises_stays_where_the_words_deny_it() {
    String text = "No numbness in my hands at all, the straps are fine.";
    assertEquals(Set.of(), present(ALONE, text));
    assertEquals(
        Set.of("numb-or-tingling-arm-or-hand"),
        present(new Intake(BOOK, List.of(finding("numb-or-tingling-arm-or-hand"))), text));
  }

  @Test
  void a_reader_raises_dangers_only() {
    assertEquals(
        Set.of("band-rides-up-at-the-back"),
        present(
            new Intake(BOOK, List.of(finding("straps-slip-off", "no-such-sign"))),
            "The band rides up at the back."));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "it's gone red and sore under there, the skin is peeling under the band",
        "can't feel my thumb in this bra",
        "one breast suddenly bigger than the other",
        "the area is inflamed, a hard, warm, tender patch on one side of my breast"
      })
  void what_a_tester_from_outside_found_unread_stops(String text) {
    Set<String> redFlags =
        present(ALONE, text).stream()
            .filter(id -> BOOK.catalog().signs().get(id).redFlag())
            .collect(Collectors.toSet());
    assertTrue(!redFlags.isEmpty(), text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "radiotherapy | My bra: radiation finished two weeks ago",
        "chemotherapy | My bra is loose, I'm on chemo",
        "port-or-pacemaker | The strap sits on it: I have a pacemaker",
        "port-or-pacemaker | The strap sits on it: I have a port",
        "shingles | The band is firm and I had shingles on my ribs",
        "hurt-ribs | The band is firm. I broke two ribs last month",
        "lymphoedema-or-nodes-removed | The strap digs in. Lymphedema in my right arm",
        "prosthesis-or-pocket | I wear a breast form in my bra",
        "nursing | Larkhythe 80C, I'm 4 months post partum and feeding",
        "nursing | before a feed I bulge out at the top of the bra",
        "nursing | The band rolls when I'm pumping",
        "pregnant | The band sits on my bump",
        "operated-recently | The band rolls, I just had a c-section",
        "implant-or-expander | The cup is empty over my expander",
        "growing | The bra is tight, my daughter is 13",
        "sleeping-in-it | I wear the bra in bed"
      })
  void circumstances_in_ordinary_words_are_read(String line) {
    String[] parts = line.split(" \\| ");
    assertTrue(
        ALONE.read(parts[1]).circumstances().stream().anyMatch(one -> one.value().equals(parts[0])),
        line);
  }

  @Test
  void words_that_cannot_be_judged_are_for_a_person_to_read() {
    String text = "The band rides up. They rang from the hospital about my scan.";
    Reading reading = ALONE.read(text);
    assertEquals("hospital", reading.readYourself().get(0).span().in(text));
    assertEquals(Set.of("band-rides-up-at-the-back"), present(ALONE, text));
  }

  @Test
  void a_plain_fit_question_is_for_nobody_to_read() {
    assertEquals(List.of(), ALONE.read("The band rides up at the back.").readYourself());
  }

  /** "Nursing" is no nurse who was asked; a nurse who was is still for a person to read about. */
  @Test
  void a_nursing_wearer_is_no_nurse() {
    assertEquals(List.of(), ALONE.read("I am nursing. The straps slip off.").readYourself());
    assertEquals(List.of(), ALONE.read("I am 34 and nursing, the straps slip off.").readYourself());
    assertEquals(1, ALONE.read("The nurse told me to show my chest.").readYourself().size());
  }

  /** A lump read as a danger is not also a word for a person to judge; another word still is. */
  @Test
  void words_of_the_phrase_a_danger_was_read_by_are_no_further_doubt() {
    String lump = "Found a pea sized lump in my left breast yesterday.";
    assertTrue(present(ALONE, lump).contains("new-lump-dimpling-or-discharge"));
    assertEquals(List.of(), ALONE.read(lump).readYourself());
    assertEquals(1, ALONE.read(lump + " I was in hospital over it.").readYourself().size());
  }
}
