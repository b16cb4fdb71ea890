package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.clinic.AuditEntry.Deed;
import easewright.photo.CleanPhoto;
import easewright.photo.TestPictures;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Behaviour of the store with any engine; run once for each. */
abstract class StoreTest {
  static final Duration PATIENCE = Duration.ofSeconds(10);

  final SettableClock clock = new SettableClock();
  final List<StoreCondition> changes = new CopyOnWriteArrayList<>();
  final List<Duration> held = new CopyOnWriteArrayList<>();
  final StoreNews news =
      new StoreNews() {
        @Override
        public void changed(StoreCondition now) {
          changes.add(now);
        }

        @Override
        public void clockHeld(Duration time) {
          if (!held.contains(time)) {
            held.add(time); // it is reported again each day
          }
        }
      };
  ClinicStore store;
  StoreAddress address;

  abstract StoreAddress empty();

  /** The engine's error code for a text too long for its column. */
  abstract String tooLong();

  @BeforeEach
  void open() {
    address = empty();
    store = new ClinicStore(address, clock, PATIENCE, null, news);
  }

  @AfterEach
  void close() {
    store.close();
  }

  Caller opened() {
    return holder(store.clinics().open("Evening class", "Odile", 30).key());
  }

  private Caller holder(Key key) {
    return store.keys().holder(key.text()).orElseThrow();
  }

  private Caller helper(Caller organiser, String name) {
    return holder(store.keys().issue(organiser, Role.HELPER, name));
  }

  private static JsonNode json(String name, String value) {
    return JsonNodeFactory.instance.objectNode().put(name, value);
  }

  static Fitted fitted(String bust) {
    return fitted(bust, false);
  }

  static Fitted fitted(String bust, boolean redFlag) {
    return new Fitted(
        "It rides up.",
        json("bust", bust),
        json("version", "1"),
        new Case.Gist(redFlag, "band-too-long", "band-rides-up-at-the-back", null, "M"));
  }

  @Test
  void a_case_opened_with_a_round_that_cannot_be_stored_is_not_there_either() {
    Caller organiser = opened();
    Case whole = store.rounds().open(organiser, "Wrenna", fitted("94 cm"));
    Case.Gist tooLong = new Case.Gist(false, "c".repeat(81), null, null, null);
    Fitted bad = new Fitted("It gapes.", json("bust", "94 cm"), json("version", "1"), tooLong);

    assertThrows(StoreFailure.class, () -> store.rounds().open(organiser, "Tamsel", bad));

    assertEquals(1, whole.rounds());
    assertEquals(List.of(whole), store.cases().queue(organiser));
  }

  /** Common practice: whoever may write a reply may mend it, and what was done stays on record. */
  @Test
  void a_reply_is_corrected_and_withdrawn_and_the_audit_says_so() {
    Caller organiser = opened();
    Caller helper = helper(organiser, "Perrin");
    Case asked = store.rounds().open(organiser, "Wrenna", fitted("94 cm"));
    clock.pass(Duration.ofMinutes(5));

    store.rounds().reply(helper, asked.id(), 1, asked.version(), "Take the band inn.");
    Story corrected =
        store.rounds().reply(helper, asked.id(), 1, asked.version() + 1, "Take the band in.");
    assertEquals("Take the band in.", corrected.rounds().get(0).reply().text());
    assertNull(corrected.current().waitingSince());

    int now = corrected.current().version();
    assertThrows(
        Overtaken.class, () -> store.rounds().withdrawReply(helper, asked.id(), 1, now - 1));
    Story withdrawn = store.rounds().withdrawReply(helper, asked.id(), 1, now);
    assertNull(withdrawn.rounds().get(0).reply());
    assertEquals(asked.waitingSince(), withdrawn.current().waitingSince());
    assertEquals(
        withdrawn, store.rounds().withdrawReply(helper, asked.id(), 1, now + 1), "nothing to do");
    assertThrows(NotHere.class, () -> store.rounds().withdrawReply(helper, asked.id(), 2, now + 1));

    assertEquals(
        List.of(Deed.REPLY_WITHDRAWN, Deed.REPLY_CORRECTED, Deed.REPLY_POSTED),
        store.clinics().audit(organiser).stream()
            .map(AuditEntry::deed)
            .filter(deed -> deed.name().startsWith("REPLY"))
            .toList());
  }

  @Test
  void the_queue_shows_the_first_words_of_the_latest_post() {
    Caller organiser = opened();
    Case asked = store.rounds().open(organiser, "Wrenna", fitted("94 cm"));
    Fitted later = fitted("94 cm");
    store
        .rounds()
        .add(
            organiser,
            asked.id(),
            new Fitted(
                "It gapes. " + "x".repeat(900), later.request(), later.advice(), later.gist()));
    store.cases().open(organiser, "Tamsel");

    List<Case> queue = store.cases().queue(organiser);

    assertEquals("It rides up.", asked.asked());
    assertTrue(queue.get(0).asked().startsWith("It gapes. xx"), queue.get(0).asked());
    assertEquals(Case.FIRST_WORDS, queue.get(0).asked().length());
    assertNull(queue.get(1).asked());
  }

  @Test
  void a_case_is_read_as_stored_even_after_reopening_the_store() {
    Caller organiser = opened();
    Caller helper = helper(organiser, "Perrin");
    Case opened = store.cases().open(organiser, "Wrenna");
    clock.pass(Duration.ofMinutes(5));
    Round round = store.rounds().add(helper, opened.id(), fitted("94 cm"));
    Note note = store.cases().note(helper, opened.id(), "Ask about the elastic. ½ \u0000".trim());
    store.rounds().reply(helper, opened.id(), 1, 3, "Take the band in.");
    Story before =
        store.rounds().outcome(helper, opened.id(), 1, Outcome.BETTER, "Much better — thanks 🧵");

    store.close();
    Story after = store.cases().story(organiser, opened.id());

    assertEquals(before, after);
    assertEquals(List.of(note), after.notes());
    assertEquals(round.fitted(), after.rounds().get(0).fitted());
    assertEquals("Perrin", after.rounds().get(0).reply().by());
    assertEquals(5, after.current().version());
    assertEquals("Much better — thanks 🧵", after.rounds().get(0).outcomeSaid());
  }

  @Test
  void of_two_helpers_taking_a_case_at_once_one_wins_and_the_other_learns_who() throws Exception {
    Caller organiser = opened();
    Caller one = helper(organiser, "Perrin");
    Caller other = helper(organiser, "Isaura");
    for (int time = 0; time < 20; time++) {
      Case open = store.cases().open(organiser, "Wrenna");
      List<Object> results = atOnce(() -> take(one, open), () -> take(other, open));
      Case won = (Case) results.stream().filter(Case.class::isInstance).findFirst().orElseThrow();
      Overtaken lost =
          (Overtaken)
              results.stream().filter(Overtaken.class::isInstance).findFirst().orElseThrow();
      assertEquals(won.holder().name(), lost.holder());
      assertEquals(2, won.version());
      assertEquals(2, lost.version());
    }
  }

  private Object take(Caller helper, Case open) {
    try {
      return store.cases().take(helper, open.id(), open.version());
    } catch (Overtaken lost) {
      return lost;
    }
  }

  @SafeVarargs
  private static <T> List<T> atOnce(Callable<T>... works) throws Exception {
    CyclicBarrier start = new CyclicBarrier(works.length);
    ExecutorService threads = Executors.newFixedThreadPool(works.length);
    try {
      List<Future<T>> futures = new ArrayList<>();
      for (Callable<T> work : works) {
        futures.add(
            threads.submit(
                () -> {
                  start.await();
                  return work.call();
                }));
      }
      List<T> results = new ArrayList<>();
      for (Future<T> future : futures) {
        results.add(future.get());
      }
      return results;
    } catch (ExecutionException failed) {
      throw (Exception) failed.getCause();
    } finally {
      threads.shutdownNow();
    }
  }

  @Test
  void rounds_added_at_once_are_all_kept_and_counted_without_a_gap() throws Exception {
    Caller organiser = opened();
    Case open = store.cases().open(organiser, "Wrenna");
    Callable<Round> add = () -> store.rounds().add(organiser, open.id(), fitted("94 cm"));
    atOnce(add, add, add, add, add, add);
    Story story = store.cases().story(organiser, open.id());
    assertEquals(List.of(1, 2, 3, 4, 5, 6), story.rounds().stream().map(Round::number).toList());
    assertEquals(6, story.current().rounds());
  }

  @Test
  void what_was_decided_on_an_old_version_changes_nothing() {
    Caller organiser = opened();
    Caller helper = helper(organiser, "Perrin");
    Case open = store.cases().open(organiser, "Wrenna");
    store.rounds().add(organiser, open.id(), fitted("94 cm"));
    String id = open.id();
    assertThrows(Overtaken.class, () -> store.cases().close(helper, id, 1));
    assertThrows(Overtaken.class, () -> store.cases().handOver(helper, id, 1, null));
    assertThrows(Overtaken.class, () -> store.rounds().reply(helper, id, 1, 1, "Take it in."));
    assertThrows(Overtaken.class, () -> store.clinics().change(organiser, 7, "Other", 9));
    Story story = store.cases().story(organiser, id);
    assertEquals(2, story.current().version());
    assertNull(story.rounds().get(0).reply());
    assertEquals("Evening class", store.clinics().read(organiser).name());
  }

  @Test
  void a_case_with_a_holder_is_reserved_for_them_but_the_organiser_may_step_in() {
    Caller organiser = opened();
    Caller one = helper(organiser, "Perrin");
    Caller other = helper(organiser, "Isaura");
    Case open = store.cases().open(organiser, "Wrenna");
    Case taken = store.cases().take(one, open.id(), 1);
    Overtaken told =
        assertThrows(Overtaken.class, () -> store.cases().take(other, open.id(), taken.version()));
    assertEquals("Perrin", told.holder());
    Case handed = store.cases().handOver(organiser, open.id(), 2, other.key());
    assertEquals("Isaura", handed.holder().name());
    assertTrue(store.cases().close(other, open.id(), 3).closed());
  }

  @Test
  void what_is_asked_of_a_clinic_that_was_deleted_meanwhile_is_not_there() {
    Caller organiser = opened();
    store.clinics().delete(organiser);
    for (Executable asked :
        List.<Executable>of(
            () -> store.cases().open(organiser, "Wrenna"),
            () -> store.rounds().open(organiser, "Wrenna", fitted("94 cm")),
            () -> store.keys().issue(organiser, Role.HELPER, "Perrin"),
            () -> store.keys().list(organiser),
            () -> store.cases().queue(organiser),
            () -> store.clinics().read(organiser),
            () -> store.clinics().export(organiser))) {
      assertThrows(NotHere.class, asked);
    }
  }

  @Test
  void a_case_can_be_handed_only_to_a_key_of_the_same_clinic() {
    Caller organiser = opened();
    Caller stranger = opened();
    Case open = store.cases().open(organiser, "Wrenna");
    Key link = store.keys().issueLink(organiser, open.id());
    for (String to : List.of(stranger.key(), link.id(), "nobody")) {
      assertThrows(NotHere.class, () -> store.cases().handOver(organiser, open.id(), 1, to), to);
    }
  }

  @Test
  void the_queue_has_red_flags_first_then_the_longest_waiting_then_the_answered() {
    Caller organiser = opened();
    Case answered = store.cases().open(organiser, "answered");
    store.rounds().add(organiser, answered.id(), fitted("94 cm"));
    store.rounds().reply(organiser, answered.id(), 1, 2, "Take it in.");
    for (String[] one :
        new String[][] {{"longest", ""}, {"second", ""}, {"hurts", "red"}, {"hurts too", "red"}}) {
      clock.pass(Duration.ofMinutes(1));
      Case open = store.cases().open(organiser, one[0]);
      store.rounds().add(organiser, open.id(), fitted("94 cm", one[1].equals("red")));
    }
    List<Case> queue = store.cases().queue(organiser);
    assertEquals(
        List.of("hurts", "hurts too", "longest", "second", "answered"),
        queue.stream().map(Case::nickname).toList());
    assertNull(queue.get(4).waitingSince());
    assertEquals("M", queue.get(0).last().sizeCut());
  }

  @Test
  void a_further_round_does_not_move_a_waiting_wearer_to_the_end_of_the_queue() {
    Caller organiser = opened();
    Case open = store.cases().open(organiser, "Wrenna");
    store.rounds().add(organiser, open.id(), fitted("94 cm"));
    clock.pass(Duration.ofHours(1));
    store.rounds().add(organiser, open.id(), fitted("95 cm"));
    assertEquals(
        clock.instant().minus(Duration.ofHours(1)),
        store.cases().queue(organiser).get(0).waitingSince());
  }

  @Test
  void two_rounds_without_progress_make_a_case_stuck_and_progress_frees_it() {
    Caller organiser = opened();
    String id = store.cases().open(organiser, "Wrenna").id();
    List<Outcome> outcomes = List.of(Outcome.BETTER, Outcome.SAME, Outcome.WORSE, Outcome.BETTER);
    List<Boolean> stuck = new ArrayList<>();
    for (int i = 0; i < outcomes.size(); i++) {
      store.rounds().add(organiser, id, fitted("94 cm"));
      stuck.add(
          store.rounds().outcome(organiser, id, i + 1, outcomes.get(i), null).current().stuck());
    }
    assertEquals(List.of(false, false, true, false), stuck);
  }

  @Test
  void a_new_round_opens_a_closed_case_again() {
    Caller organiser = opened();
    String id = store.cases().open(organiser, "Wrenna").id();
    assertTrue(store.cases().close(organiser, id, 1).closed());
    store.rounds().add(organiser, id, fitted("94 cm"));
    Case again = store.cases().story(organiser, id).current();
    assertFalse(again.closed());
    assertNotNull(again.waitingSince());
  }

  @Test
  void a_wearer_sees_one_case_without_the_helpers_notes_and_can_add_to_it() {
    Caller organiser = opened();
    Case mine = store.cases().open(organiser, "Wrenna");
    Case other = store.cases().open(organiser, "Marrowby");
    Caller wearer = holder(store.keys().issueLink(organiser, mine.id()));
    store.cases().note(organiser, mine.id(), "Be gentle.");
    store.cases().note(wearer, mine.id(), "I tried it.");
    store.rounds().add(wearer, mine.id(), fitted("94 cm"));
    Story story = store.cases().story(wearer, mine.id());
    assertEquals(List.of("I tried it."), story.notes().stream().map(Note::text).toList());
    assertEquals("Wrenna", story.rounds().get(0).by().name());
    assertThrows(NotHere.class, () -> store.cases().story(wearer, other.id()));
    assertThrows(NotHere.class, () -> store.rounds().add(wearer, other.id(), fitted("9 cm")));
    assertThrows(NotHere.class, () -> store.cases().delete(wearer, other.id()));
    assertThrows(NotAllowed.class, () -> store.cases().queue(wearer));
    store.cases().delete(wearer, mine.id());
    assertThrows(NotHere.class, () -> store.cases().story(organiser, mine.id()));
  }

  @Test
  void a_new_link_ends_the_old_one_and_deleting_the_case_ends_both() {
    Caller organiser = opened();
    Case open = store.cases().open(organiser, "Wrenna");
    Key first = store.keys().issueLink(organiser, open.id());
    Key second = store.keys().issueLink(organiser, open.id());
    assertTrue(store.keys().holder(first.text()).isEmpty());
    assertTrue(store.keys().holder(second.text()).isPresent());
    store.cases().delete(organiser, open.id());
    assertTrue(store.keys().holder(second.text()).isEmpty());
  }

  @Test
  void a_revoked_key_opens_nothing_and_its_holders_cases_go_back_to_the_queue() {
    Caller organiser = opened();
    Key key = store.keys().issue(organiser, Role.HELPER, "Perrin");
    Case open = store.cases().open(organiser, "Wrenna");
    store.cases().take(holder(key), open.id(), 1);
    store.keys().revoke(organiser, key.id());
    assertTrue(store.keys().holder(key.text()).isEmpty());
    assertNull(store.cases().story(organiser, open.id()).current().holder());
  }

  @Test
  void the_last_organisers_key_cannot_be_revoked_not_even_by_two_at_once() throws Exception {
    Caller one = opened();
    assertThrows(LastKey.class, () -> store.keys().revoke(one, one.key()));
    Caller other = holder(store.keys().issue(one, Role.ORGANISER, "Isaura"));
    atOnce(() -> revoked(one, other.key()), () -> revoked(other, one.key()));
    long left =
        List.of(one, other).stream()
            .filter(
                caller -> {
                  try {
                    return !store.keys().list(caller).isEmpty();
                  } catch (NotHere gone) {
                    return false;
                  }
                })
            .count();
    assertTrue(left >= 1);
    assertEquals(
        1, store.keys().list(one).stream().filter(key -> key.role() == Role.ORGANISER).count());
  }

  private boolean revoked(Caller by, String key) {
    try {
      store.keys().revoke(by, key);
      return true;
    } catch (LastKey last) {
      return false;
    }
  }

  @Test
  void only_data_unchanged_for_the_clinics_retention_is_deleted() {
    Caller organiser = opened();
    Caller longer = holder(store.clinics().open("Other class", "Isaura", 60).key());
    Case old = store.cases().open(organiser, "old");
    store.rounds().add(organiser, old.id(), fitted("94 cm"));
    Case touched = store.cases().open(organiser, "touched");
    Case kept = store.cases().open(longer, "kept");
    passInUse(20);
    store.cases().note(organiser, touched.id(), "Still at it.");
    passInUse(9);
    clock.pass(Duration.ofDays(1).minusMillis(1));
    store.retention().expireAll();
    assertEquals(2, store.cases().queue(organiser).size());
    clock.pass(Duration.ofMillis(2));
    store.retention().expireFor(longer);
    assertEquals(2, store.cases().queue(organiser).size());
    store.retention().expireAll();
    assertEquals(
        List.of("touched"), store.cases().queue(organiser).stream().map(Case::nickname).toList());
    assertEquals("kept", store.cases().story(longer, kept.id()).current().nickname());
    AuditEntry expired =
        store.clinics().audit(organiser).stream()
            .filter(entry -> entry.deed() == Deed.CASE_EXPIRED)
            .findFirst()
            .orElseThrow();
    assertEquals(old.id(), expired.caseId());
    assertNull(expired.key());
  }

  @Test
  void a_photo_is_kept_as_it_is_and_goes_with_its_case() {
    Caller organiser = opened();
    Case open = store.cases().open(organiser, "Wrenna");
    CleanPhoto photo = TestPictures.clean(400, 300);
    assertThrows(
        NotHere.class, () -> store.photos().add(organiser, open.id(), 1, "No round yet", photo));
    store.rounds().add(organiser, open.id(), fitted("94 cm"));
    Photo added = store.photos().add(organiser, open.id(), 1, "The back, arms down", photo);
    store.close();
    assertEquals(List.of(added), store.cases().story(organiser, open.id()).photos());
    assertArrayEquals(photo.large(), store.photos().large(organiser, open.id(), added.id()));
    assertArrayEquals(photo.small(), store.photos().small(organiser, open.id(), added.id()));
    String impossible = "\0" + added.id();
    assertThrows(NotHere.class, () -> store.photos().large(organiser, open.id(), impossible));
    assertThrows(NotHere.class, () -> store.photos().small(organiser, open.id(), impossible));
    assertThrows(NotHere.class, () -> store.photos().delete(organiser, open.id(), impossible));
    store.cases().delete(organiser, open.id());
    assertThrows(NotHere.class, () -> store.photos().large(organiser, open.id(), added.id()));
    assertEquals(0, rowsOf("photos"));

    Case old = store.cases().open(organiser, "Tamsel");
    store.rounds().add(organiser, old.id(), fitted("94 cm"));
    store.photos().add(organiser, old.id(), 1, "The front", photo);
    passInUse(31);
    assertEquals(0, rowsOf("photos"), "kept no longer than its case");
  }

  private int rowsOf(String table) {
    store.close(); // a file is opened by one at a time
    try (Database plain = new Database(address, PATIENCE)) {
      return plain.transaction(
          handle -> handle.createQuery("select count(*) from " + table).mapTo(Integer.class).one());
    }
  }

  /** Passes days in which the service checks its clock once a day. */
  void passInUse(int days) {
    for (int day = 0; day < days; day++) {
      clock.pass(Duration.ofDays(1));
      store.retention().expireAll();
    }
  }

  private List<String> left(Caller organiser) {
    store.retention().expireAll();
    store.retention().expireFor(organiser);
    return store.cases().queue(organiser).stream().map(Case::nickname).sorted().toList();
  }

  @Test
  void a_clock_set_ahead_deletes_nothing_until_the_time_has_really_passed() {
    Caller organiser = opened();
    store.cases().open(organiser, "old");
    passInUse(20);
    store.cases().open(organiser, "new");
    clock.pass(Duration.ofDays(200));
    assertEquals(List.of("new", "old"), left(organiser));
    assertEquals(List.of(Duration.ofDays(200)), held);
    store.close();
    assertEquals(List.of("new", "old"), left(organiser), "after a start");

    passInUse(9);
    assertEquals(List.of("new", "old"), left(organiser));
    passInUse(2);
    assertEquals(List.of("new"), left(organiser), "the old one is 31 days old now");
    passInUse(20);
    assertEquals(List.of(), left(organiser));
  }

  @Test
  void a_clock_set_ahead_and_back_again_leaves_nothing_behind() {
    Caller organiser = opened();
    store.cases().open(organiser, "old");
    passInUse(1);
    clock.pass(Duration.ofDays(200));
    assertEquals(List.of("old"), left(organiser));
    clock.pass(Duration.ofDays(-200));
    assertEquals(List.of("old"), left(organiser));
    passInUse(28);
    assertEquals(List.of("old"), left(organiser));
    passInUse(2);
    assertEquals(List.of(), left(organiser));
  }

  @Test
  void a_season_without_the_service_counts_once_it_is_confirmed() {
    Caller organiser = opened();
    store.cases().open(organiser, "old");
    passInUse(1);
    clock.pass(Duration.ofDays(90));
    assertEquals(List.of("old"), left(organiser));
    LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    for (LocalDate said : List.of(today.minusDays(30), today.plusDays(1))) {
      store.close();
      store = new ClinicStore(address, clock, PATIENCE, said, news);
      clock.pass(Duration.ofHours(1));
      assertEquals(List.of("old"), left(organiser), said + " is not today");
    }
    store.close();
    store = new ClinicStore(address, clock, PATIENCE, today, news);
    clock.pass(Duration.ofHours(1));
    assertEquals(List.of(), left(organiser));
  }

  /** The clock may already be wrong when this version first opens a store. */
  @Test
  void a_store_that_retention_never_checked_starts_from_its_last_write() {
    Caller organiser = opened();
    store.cases().open(organiser, "old");
    clock.pass(Duration.ofDays(200));
    assertEquals(List.of("old"), left(organiser));
    assertEquals(List.of(Duration.ofDays(200)), held);
  }

  @Test
  void a_deleted_clinic_leaves_no_row_behind_and_the_other_stays_whole() {
    Caller organiser = opened();
    Case open = store.cases().open(organiser, "Wrenna");
    store.rounds().add(organiser, open.id(), fitted("94 cm"));
    store.cases().note(organiser, open.id(), "A note.");
    store.keys().issueLink(organiser, open.id());
    Caller other = opened();
    store.cases().open(other, "Marrowby");
    store.clinics().delete(organiser);
    store.close();
    try (Database database = new Database(address, PATIENCE)) {
      List<Integer> counts =
          database.transaction(
              handle ->
                  List.of("clinics", "cases", "access_keys", "rounds", "notes").stream()
                      .map(
                          table ->
                              handle
                                  .createQuery("select count(*) from " + table)
                                  .mapTo(Integer.class)
                                  .one())
                      .toList());
      assertEquals(List.of(1, 1, 1, 0, 0), counts);
    }
    assertEquals(1, store.cases().queue(other).size());
  }

  @Test
  void every_reading_and_changing_of_a_case_stands_in_the_audit_without_what_it_says() {
    Caller organiser = opened();
    Caller helper = helper(organiser, "Perrin");
    String id = store.cases().open(helper, "Wrenna").id();
    store.cases().take(helper, id, 1);
    store.rounds().add(helper, id, fitted("94 cm"));
    store.rounds().reply(helper, id, 1, 3, "Take it in.");
    store.rounds().outcome(helper, id, 1, Outcome.SAME, "No change.");
    store.cases().note(helper, id, "A note.");
    store.cases().story(helper, id);
    store.cases().export(helper, id);
    store.cases().handOver(helper, id, 6, null);
    store.cases().close(helper, id, 7);
    store.keys().issueLink(helper, id);
    store.cases().delete(organiser, id);
    List<AuditEntry> entries =
        store.clinics().audit(organiser).stream().filter(one -> id.equals(one.caseId())).toList();
    assertEquals(
        List.of(
            Deed.CASE_DELETED,
            Deed.KEY_ISSUED,
            Deed.CASE_CLOSED,
            Deed.CASE_HANDED_OVER,
            Deed.CASE_EXPORTED,
            Deed.CASE_READ,
            Deed.NOTE_WRITTEN,
            Deed.OUTCOME_TOLD,
            Deed.REPLY_POSTED,
            Deed.ROUND_ADDED,
            Deed.CASE_TAKEN,
            Deed.CASE_OPENED),
        entries.stream().map(AuditEntry::deed).toList());
    assertEquals("Perrin", entries.get(1).name());
    for (String said : List.of("94 cm", "Take it in", "No change", "A note", "Wrenna")) {
      assertFalse(entries.toString().contains(said), said);
    }
  }

  @Test
  void what_can_be_no_id_is_not_here_whatever_an_engine_makes_of_it() {
    Caller organiser = opened();
    String id = store.cases().open(organiser, "Wrenna").id();
    for (String none : List.of("", "a\u0000", id + "\u0000", "\uD800", "a".repeat(5000))) {
      assertThrows(NotHere.class, () -> store.cases().story(organiser, none));
      assertThrows(NotHere.class, () -> store.cases().delete(organiser, none));
      assertThrows(NotHere.class, () -> store.cases().note(organiser, none, "A note."));
      assertThrows(NotHere.class, () -> store.cases().handOver(organiser, id, 1, none));
      assertThrows(NotHere.class, () -> store.keys().issueLink(organiser, none));
      assertThrows(NotHere.class, () -> store.keys().revoke(organiser, none));
    }
  }

  @Test
  void work_that_fails_half_way_leaves_nothing() {
    Caller organiser = opened();
    Case open = store.cases().open(organiser, "Wrenna");
    // A round requires its request: this is detected only after the case's counter was increased.
    Fitted broken = new Fitted(null, null, json("a", "b"), fitted("9 cm").gist());
    assertThrows(RuntimeException.class, () -> store.rounds().add(organiser, open.id(), broken));
    assertThrows(
        NotHere.class, () -> store.rounds().outcome(organiser, open.id(), 3, Outcome.SAME, null));
    Story story = store.cases().story(organiser, open.id());
    assertEquals(1, story.current().version());
    assertEquals(List.of(), story.rounds());
  }

  /** Keeps a transaction open. */
  static Void stay(CountDownLatch held, CountDownLatch done) {
    held.countDown();
    try {
      done.await();
    } catch (InterruptedException stopped) {
      throw new IllegalStateException(stopped);
    }
    return null;
  }

  @Test
  void a_failure_of_the_engine_tells_its_state_but_no_value() {
    opened();
    store.close(); // only one store can hold the file at a time
    StoreFailure failure =
        assertThrows(
            StoreFailure.class,
            () -> {
              try (Database database = new Database(address, PATIENCE)) {
                database.transaction(
                    handle ->
                        handle
                            .createUpdate(
                                "insert into clinics (id, name, retention_days, version, opened_ms)"
                                    + " values (:id, 'n', 1, 1, 1)")
                            .bind("id", "zq731 mm is longer than sixteen characters")
                            .execute());
              }
            });
    assertEquals("The store failed, " + tooLong() + ".", failure.getMessage());
    assertNull(failure.getCause());
  }

  @Test
  void an_answer_of_a_hundred_thousand_characters_is_kept_whole() {
    Caller organiser = opened();
    Case open = store.cases().open(organiser, "Wrenna");
    String much = "ä".repeat(100_000);
    store
        .rounds()
        .add(
            organiser,
            open.id(),
            new Fitted(null, json("a", much), json("b", much), fitted("9 cm").gist()));
    Fitted stored = store.cases().story(organiser, open.id()).rounds().get(0).fitted();
    assertEquals(much, stored.request().path("a").textValue());
    assertEquals(much, stored.advice().path("b").textValue());
  }

  @Test
  void insight_counts_a_case_once_and_leaves_rounds_with_a_red_flag_out() {
    Caller organiser = opened();
    Caller stranger = opened();
    store.rounds().add(stranger, store.cases().open(stranger, "Other").id(), fitted("94 cm"));
    for (int i = 0; i < 5; i++) {
      String id = store.cases().open(organiser, "Wrenna " + i).id();
      store.rounds().add(organiser, id, seen("band-too-long", "scoop"));
      store.rounds().add(organiser, id, seen(i == 0 ? null : "band-too-long", "scoop"));
    }
    String hurts = store.cases().open(organiser, "Pellow").id();
    store.rounds().add(organiser, hurts, fitted("94 cm", true));

    Insight insight = store.insights().of(organiser, Insight.Asked.ANY, List.of());

    assertEquals(5, insight.cases());
    assertEquals(1, insight.redFlags());
    assertEquals(List.of(new Insight.Count("band-too-long", new Share(5, 5))), insight.causes());
    assertEquals(
        List.of(new Insight.Count("band-rides-up-at-the-back", new Share(5, 5))), insight.signs());
    assertEquals(
        List.of("M", "stretchy", "neckline=scoop"),
        insight.groups().stream().map(Insight.Group::value).toList());
    Insight.Asked other = new Insight.Asked(null, null, null, "neckline=high");
    Insight none = store.insights().of(organiser, other, List.of());
    assertEquals(0, none.cases());
    assertEquals(List.of(), none.groups());
    assertEquals(insight.known(), none.known(), "what can be asked for does not depend on it");
    assertEquals(new Insight.Known(Insight.By.CLOTH, "stretchy", 5), none.known().get(1));
    assertTrue(insight.complete());
  }

  private static Fitted seen(String cause, String neckline) {
    ObjectMapper json = new ObjectMapper();
    try {
      return new Fitted(
          null,
          json.readTree("{\"choices\": {\"neckline\": \"" + neckline + "\"}}"),
          json.readTree(
              "{\"understood\": {\"signs\": ["
                  + "{\"id\": \"band-rides-up-at-the-back\", \"present\": true},"
                  + "{\"id\": \"straps-dig-in\", \"present\": false}]},"
                  + " \"cloth\": [{\"role\": \"main\", \"handbookClass\": \"stretchy\"}]}"),
          new Case.Gist(false, cause, "band-rides-up-at-the-back", null, "M"));
    } catch (JsonProcessingException impossible) {
      throw new AssertionError(impossible);
    }
  }
}
