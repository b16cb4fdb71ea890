package easewright.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.answering.RoundReader;
import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import easewright.clinic.Insight;
import easewright.clinic.Queue;
import easewright.clinic.RealPostgres;
import easewright.clinic.SampleClinic;
import easewright.clinic.StoreAddress;
import easewright.pattern.PatternSheets;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sample's contents are known, so it shows whether queue and insight find them. */
@QuarkusTest
class SampleClinicTest {
  @Inject RoundReader fittings;
  @Inject PatternSheets sheets;
  @TempDir Path folder;

  @Test
  void the_sample_shows_what_a_teacher_looks_for_and_is_removed_whole_from_a_folder() {
    check(StoreAddress.inFolder(folder.resolve("store")));
  }

  @Test
  void the_sample_shows_what_a_teacher_looks_for_and_is_removed_whole_from_a_server() {
    check(RealPostgres.emptyDatabase());
  }

  private void check(StoreAddress address) {
    try (ClinicStore store = new ClinicStore(address, Clock.systemUTC(), Duration.ofSeconds(10))) {
      Clinics.Opened other = store.clinics().open("Evening class", "Odile", 30);
      Clinics.Opened sample = SampleClinic.open(store, fittings::read, Instant.now());
      Caller organiser = store.keys().holder(sample.key().text()).orElseThrow();
      assertTrue(store.clinics().read(organiser).sample());

      List<Case> cases = store.cases().queue(organiser);
      assertEquals(40, cases.size());
      assertEquals(40, cases.stream().map(Case::nickname).distinct().count());
      Queue queue = store.cases().triage(organiser);
      List<Queue.Reason> reasons = queue.entries().stream().map(Queue.Entry::reason).toList();
      assertEquals(reasons.stream().sorted().toList(), reasons, "dangers first, then the stuck");
      assertEquals(Set.of(Queue.Reason.values()), Set.copyOf(reasons));
      assertEquals(Set.of("Quenby", "Zenna", "Hale-Marie"), names(queue, Queue.Reason.RED_FLAG));
      assertTrue(names(queue, Queue.Reason.STUCK).containsAll(Set.of("Fennet", "Jessamy")));
      assertTrue(
          queue.groups().stream()
              .anyMatch(
                  group ->
                      group.cases().stream()
                          .map(Case::nickname)
                          .collect(Collectors.toSet())
                          .containsAll(Set.of("Marget", "Noreen-Ash", "Philla"))),
          () -> "groups " + queue.groups());

      Insight insight = store.insights().of(organiser, Insight.Asked.ANY, sheets.shipped());
      assertEquals(
          Set.of("quillmere-top front-armhole-too-long"),
          insight.faults().stream()
              .map(fault -> fault.sheet().id() + " " + fault.cause())
              .collect(Collectors.toCollection(TreeSet::new)));

      store.clinics().delete(organiser);
      assertTrue(store.keys().holder(sample.key().text()).isEmpty());
      Caller left = store.keys().holder(other.key().text()).orElseThrow();
      assertEquals(List.of(), store.cases().queue(left));
    }
  }

  private static Set<String> names(Queue queue, Queue.Reason reason) {
    return queue.entries().stream()
        .filter(entry -> entry.reason() == reason)
        .map(entry -> entry.current().nickname())
        .collect(Collectors.toSet());
  }
}
