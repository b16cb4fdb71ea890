package easewright.deadline;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.intake.Intake;
import easewright.layout.LaidPart;
import easewright.layout.Packing;
import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBook;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** Long-running work aborts when its time is up, and leaves nothing behind. */
class DeadlineTest {
  private static void isGivenUp(Supplier<?> work) {
    assertThrows(DeadlinePassed.class, () -> Deadline.within(Duration.ofNanos(1), work));
    assertDoesNotThrow(Deadline::check, "The time went on after the work.");
    assertDoesNotThrow(() -> Deadline.within(Duration.ofHours(1), work));
  }

  @Test
  void a_rule_engine_run_is_aborted_and_its_session_closed() {
    RuleBook book = RuleBook.compiledIn();
    isGivenUp(
        () -> {
          try (RuleBook.Consultation consultation = book.open()) {
            return consultation.hear(List.of());
          }
        });
    assertEquals(0, book.openSessions());
  }

  @Test
  void a_layout_search_is_aborted() {
    List<LaidPart> parts =
        List.of(new LaidPart("a", 300, 200, true, false), new LaidPart("b", 500, 220, true, false));
    isGivenUp(() -> new Packing(20, 1).lay(700, parts));
  }

  @Test
  void the_check_of_a_sheet_with_many_combinations_is_aborted() throws IOException {
    PatternSheets sheets = new PatternSheets();
    String text = Files.readString(Path.of("openapi/examples/small-sheet.yaml"));
    isGivenUp(() -> sheets.readYaml(text));
  }

  @Test
  void the_reading_of_a_text_is_aborted() {
    Intake intake = new Intake(UsualBook.read());
    isGivenUp(() -> intake.read("The straps slip off and the band rides up at the back."));
  }

  @Test
  void work_within_work_keeps_the_time_of_the_whole() {
    assertThrows(
        DeadlinePassed.class,
        () ->
            Deadline.within(
                Duration.ofNanos(1),
                () ->
                    Deadline.within(
                        Duration.ofHours(1),
                        () -> {
                          Deadline.check();
                          return 0;
                        })));
  }

  @Test
  void what_is_prepared_once_for_all_costs_the_first_request_nothing() {
    Duration most = Duration.ofMillis(50);
    String prepared =
        Deadline.within(
            most,
            () -> {
              String done =
                  Deadline.uncounted(
                      () -> {
                        long end = System.nanoTime() + most.multipliedBy(2).toNanos();
                        while (System.nanoTime() < end) {
                          Deadline.check();
                        }
                        return "prepared";
                      });
              Deadline.check();
              return done;
            });
    assertEquals("prepared", prepared);
    isGivenUp(
        () -> {
          Deadline.uncounted(() -> 0);
          Deadline.check();
          return 0;
        });
    assertEquals(0, Deadline.uncounted(() -> 0));
  }

  @Test
  void others_are_waited_for_so_that_time_is_left_to_go_on_without_them() {
    Duration most = Duration.ofSeconds(100);
    assertEquals(most, Deadline.shareOfRest(most), "no deadline");
    assertEquals(most, Deadline.within(Duration.ofSeconds(200), () -> Deadline.shareOfRest(most)));
    Duration share = Deadline.within(Duration.ofSeconds(100), () -> Deadline.shareOfRest(most));
    assertTrue(share.compareTo(Duration.ofSeconds(80)) <= 0, share.toString());
    assertTrue(share.compareTo(Duration.ofSeconds(70)) > 0, share.toString());
    assertEquals(
        Duration.ZERO, Deadline.within(Duration.ofNanos(1), () -> Deadline.shareOfRest(most)));
  }
}
