package easewright.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** How sentences about one change are put together; plain English, no outside source. */
class TrialsSaidTest {
  private static final List<String> COLUMNS =
      List.of("straps", "band", "done", "undone", "right", "better", "same", "worse");

  private int at;

  private static ReaderSettings settings(List<List<String>> alike) {
    ReaderSettings.Weights weights = new ReaderSettings.Weights(0, 1, 1, -1, 0.5, 0.5);
    return new ReaderSettings(
        List.of(),
        new ReaderSettings.Limits(40, 16, 8, 4),
        new ReaderSettings.Joining(weights, weights, 0.9, 0.5, 0.01, 0.2, 0, 0.1, Set.of()),
        null,
        COLUMNS,
        alike,
        List.of(),
        List.of());
  }

  private SentenceSaid sentence(float... row) {
    at += 10;
    return new SentenceSaid(
        at - 10, at, Map.of(), new float[0], new ChangeSaid(COLUMNS, row), QuestionsSaid.NONE);
  }

  private SentenceSaid tells(float straps, float band) {
    return sentence(straps, band, straps + band, 0, 0, 0, 0, 0);
  }

  private SentenceSaid sees(int outcome) {
    float[] row = new float[COLUMNS.size()];
    row[outcome] = 0.9f;
    return sentence(row);
  }

  private SentenceSaid chats() {
    return sentence(new float[COLUMNS.size()]);
  }

  private static List<TrialSaid> trials(List<SentenceSaid> all, List<List<String>> alike) {
    return new TrialsSaid(new TrainedReading(all, settings(alike)), any -> 1, (one, id) -> false)
        .in(any -> true);
  }

  private static List<String> read(SentenceSaid... sentences) {
    return Stream.of(trials(List.of(sentences), List.of()))
        .flatMap(List::stream)
        .map(one -> one.change() + " " + one.outcome() + " to " + one.last().to())
        .toList();
  }

  @Test
  void the_sentences_after_a_change_tell_what_it_did() {
    assertEquals(List.of("band right to 20"), read(tells(0.1f, 0.8f), sees(4)));
    at = 0;
    assertEquals(
        List.of("band same to 30"), read(tells(0, 0.8f), tells(0.1f, 0.7f), sees(6), chats()));
    at = 0;
    assertEquals(
        List.of("straps worse to 10"), read(sentence(0.8f, 0, 0.8f, 0, 0, 0, 0, 0.7f), chats()));
  }

  @Test
  void what_comes_after_other_talk_is_not_of_it() {
    assertEquals(List.of(), read(tells(0, 0.8f), chats(), sees(4)));
    at = 0;
    assertEquals(List.of(), read(tells(0.3f, 0.4f), sees(4)), "neither change is likely enough");
    at = 0;
    assertEquals(List.of(), read(sees(4)), "no change is told");
  }

  @Test
  void each_change_has_its_own_outcome() {
    assertEquals(
        List.of("band worse to 20", "straps right to 40"),
        read(tells(0, 0.8f), sees(7), tells(0.9f, 0), sees(4)));
    at = 0;
    assertEquals(
        List.of(), read(tells(0, 0.8f), tells(0.8f, 0), sees(4)), "one trial told twice, or two?");
  }

  @Test
  void a_change_taken_back_without_a_reason_did_no_good() {
    float[] undone = new float[COLUMNS.size()];
    undone[0] = 0.9f;
    undone[3] = 0.9f;
    assertEquals(List.of("straps same to 20"), read(tells(0.9f, 0), sentence(undone)));
  }

  @Test
  void sentences_that_do_not_count_tell_no_change() {
    SentenceSaid first = tells(0.9f, 0);
    TrainedReading text = new TrainedReading(List.of(first, sees(4)), settings(List.of()));
    TrialsSaid trials = new TrialsSaid(text, any -> 1, (one, id) -> false);
    assertEquals(1, trials.in(any -> true).size());
    assertEquals(0, trials.in(one -> one != first).size());
  }

  @Test
  void a_model_without_changes_tells_none() {
    SentenceSaid plain = SentenceSaid.of(0, 10, "fever", new Said(0.9, 0, 0));
    assertEquals(List.of(), read(plain, plain));
  }

  @Test
  void changes_that_come_to_the_same_count_together() {
    List<SentenceSaid> told = List.of(tells(0.3f, 0.4f), sees(4));
    List<List<String>> alike = List.of(List.of("straps", "band"));
    TrialSaid one = trials(told, alike).get(0);
    assertEquals("band", one.change());
    assertEquals(0.7, one.sure(), 1e-6);
  }

  @Test
  void an_unlikely_change_leaves_its_share_to_the_others() {
    List<SentenceSaid> told = List.of(tells(0.45f, 0.5f), sees(4));
    TrialSaid one =
        new TrialsSaid(
                new TrainedReading(told, settings(List.of())),
                id -> id.equals("band") ? 0.15 : 1,
                (sentence, id) -> false)
            .in(any -> true)
            .get(0);
    assertEquals("straps", one.change());
    assertEquals(0.95 * 0.45 / (0.45 + 0.15 * 0.5), one.sure(), 1e-6);
  }

  @Test
  void a_change_that_its_sentence_names_is_likelier() {
    List<SentenceSaid> told = List.of(tells(0.3f, 0.4f), sees(4));
    TrainedReading text = new TrainedReading(told, settings(List.of()));
    TrialSaid one =
        new TrialsSaid(text, any -> 1, (sentence, id) -> id.equals("straps"))
            .in(any -> true)
            .get(0);
    assertEquals("straps", one.change());
    assertEquals(0.7 * 1.5 / (1.5 + 0.4), one.sure(), 1e-6);
  }

  @Test
  void its_sentences_together_tell_which_change_it_was() {
    assertEquals(List.of("band right to 30"), read(tells(0.2f, 0.45f), tells(0.1f, 0.7f), sees(4)));
  }

  @Test
  void columns_end_in_what_a_change_did() {
    assertTrue(ChangeSaid.areColumns(COLUMNS));
    assertFalse(ChangeSaid.areColumns(COLUMNS.subList(2, COLUMNS.size())), "no change");
    assertFalse(ChangeSaid.areColumns(COLUMNS.subList(0, COLUMNS.size() - 1)));
  }
}
