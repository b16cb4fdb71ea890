package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.clinic.Clinics.Export;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;

/** Whatever is done to any case by anyone, only members of its clinic can find it. */
class OtherClinicsPropertiesTest {
  private static final int CLINICS = 3;
  private static ClinicStore store;

  @BeforeContainer
  static void open() throws IOException {
    store =
        new ClinicStore(
            StoreAddress.inFolder(Files.createTempDirectory(Path.of("target"), "clinics")),
            Clock.systemUTC(),
            Duration.ofSeconds(10));
  }

  @AfterContainer
  static void close() {
    store.close();
  }

  /** One clinic with a caller of each role. */
  private record Stocked(Caller organiser, Caller helper, Caller wearer, Case open) {
    static Stocked make() {
      Caller organiser = holder(store.clinics().open("Circle", "Odile", 30).key());
      Case open = store.cases().open(organiser, "Wrenna");
      store.rounds().add(organiser, open.id(), StoreTest.fitted("94 cm"));
      return new Stocked(
          organiser,
          holder(store.keys().issue(organiser, Role.HELPER, "Perrin")),
          holder(store.keys().issueLink(organiser, open.id())),
          store.cases().story(organiser, open.id()).current());
    }

    private static Caller holder(Key key) {
      return store.keys().holder(key.text()).orElseThrow();
    }

    Caller caller(int role) {
      return List.of(organiser, helper, wearer).get(role);
    }
  }

  private static final List<BiConsumer<Caller, Case>> ACTIONS =
      List.of(
          (caller, one) -> store.cases().story(caller, one.id()),
          (caller, one) -> store.cases().export(caller, one.id()),
          (caller, one) -> store.cases().take(caller, one.id(), one.version()),
          (caller, one) -> store.cases().handOver(caller, one.id(), one.version(), null),
          (caller, one) -> store.cases().close(caller, one.id(), one.version()),
          (caller, one) -> store.cases().note(caller, one.id(), "Seen."),
          (caller, one) -> store.rounds().add(caller, one.id(), StoreTest.fitted("95 cm")),
          (caller, one) -> store.rounds().reply(caller, one.id(), 1, one.version(), "Seen."),
          (caller, one) -> store.rounds().outcome(caller, one.id(), 1, Outcome.WORSE, "Seen."),
          (caller, one) -> store.keys().issueLink(caller, one.id()),
          (caller, one) -> store.cases().delete(caller, one.id()));

  @Property(tries = 40)
  void a_clinic_whose_members_do_nothing_stays_unchanged(
      @ForAll @Size(min = 1, max = 25)
          List<@Size(3) List<@IntRange(min = 0, max = 32) Integer>> draws) {
    List<Stocked> clinics = new ArrayList<>();
    for (int i = 0; i < CLINICS; i++) {
      clinics.add(Stocked.make());
    }
    Stocked victim = clinics.get(0);
    Export before = store.clinics().export(victim.organiser());
    for (List<Integer> draw : draws) {
      Stocked doing = clinics.get(1 + draw.get(0) % (CLINICS - 1));
      Caller caller = doing.caller(draw.get(1) % 3);
      String result =
          result(() -> ACTIONS.get(draw.get(2) % ACTIONS.size()).accept(caller, victim.open()));
      boolean refusedByRole = result.equals("NotAllowed");
      assertEquals(refusedByRole ? "NotAllowed" : "NotHere", result);
      // The same answer as for a case that does not exist.
      assertEquals(
          result,
          result(
              () ->
                  ACTIONS
                      .get(draw.get(2) % ACTIONS.size())
                      .accept(caller, missing(victim.open()))));
    }
    assertEquals(before, store.clinics().export(victim.organiser()));
  }

  private static Case missing(Case like) {
    return new Case(
        "a".repeat(16),
        like.nickname(),
        false,
        like.version(),
        null,
        1,
        like.openedAt(),
        like.changedAt(),
        null,
        false,
        null,
        null);
  }

  private static String result(Runnable action) {
    try {
      action.run();
      return "done";
    } catch (NotHere | NotAllowed | Overtaken refused) {
      return refused.getClass().getSimpleName();
    }
  }
}
