package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.deadline.DeadlinePassed;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The store on a PostgreSQL server. */
@Tag("long")
class StoreOnPostgresTest extends StoreTest {
  private static final Duration A_SECOND = Duration.ofSeconds(1);

  /** The pool size. */
  private static final int CONNECTIONS = 8;

  @Override
  StoreAddress empty() {
    return RealPostgres.emptyDatabase();
  }

  /** String data, right truncation (ISO/IEC 9075-2, SQLSTATE class 22). */
  @Override
  String tooLong() {
    return "SQL state 22001";
  }

  /** Another transaction may hold a row lock for any length of time. */
  @Test
  @Timeout(60)
  void a_change_that_waits_for_anothers_lock_is_given_up_and_can_be_made_when_it_is_gone()
      throws Exception {
    Caller organiser = opened();
    String id = store.cases().open(organiser, "Wrenna").id();
    CountDownLatch held = new CountDownLatch(1);
    CountDownLatch done = new CountDownLatch(1);
    try (ClinicStore hasty = new ClinicStore(address, clock, Duration.ofSeconds(1));
        Database other = new Database(address, PATIENCE)) {
      Thread holder = new Thread(() -> other.transaction(handle -> hold(handle, id, held, done)));
      holder.start();
      held.await();

      assertThrows(
          DeadlinePassed.class, () -> hasty.cases().note(organiser, id, "It has to wait."));

      done.countDown();
      holder.join();
      hasty.cases().note(organiser, id, "It is served.");
      assertEquals(
          List.of("It is served."),
          hasty.cases().story(organiser, id).notes().stream().map(Note::text).toList());
    }
  }

  private static Void hold(Handle handle, String id, CountDownLatch held, CountDownLatch done) {
    handle
        .createQuery("select id from cases where id = :id for update")
        .bind("id", id)
        .mapTo(String.class)
        .one();
    return stay(held, done);
  }

  private static int one(Handle handle) {
    return handle.createQuery("select 1").mapTo(Integer.class).one();
  }

  @Test
  @Timeout(60)
  void a_statement_that_does_not_end_is_given_up() {
    try (Database hasty = new Database(address, A_SECOND)) {
      assertThrows(
          DeadlinePassed.class,
          () ->
              hasty.transaction(
                  handle ->
                      handle.createQuery("select pg_sleep(600)").mapTo(String.class).findOne()));
      assertEquals(1, hasty.transaction(StoreOnPostgresTest::one));
    }
  }

  @Test
  @Timeout(60)
  void whoever_finds_every_connection_in_use_gives_up_until_there_is_one_again() throws Exception {
    CountDownLatch held = new CountDownLatch(CONNECTIONS);
    CountDownLatch done = new CountDownLatch(1);
    try (Database hasty = new Database(address, A_SECOND)) {
      hasty.transaction(StoreOnPostgresTest::one);
      List<Thread> holders = new ArrayList<>();
      for (int i = 0; i < CONNECTIONS; i++) {
        holders.add(new Thread(() -> hasty.transaction(handle -> stay(held, done))));
      }
      holders.forEach(Thread::start);
      held.await();

      assertThrows(DeadlinePassed.class, () -> hasty.transaction(StoreOnPostgresTest::one));
      assertFalse(hasty.check().inOrder());

      done.countDown();
      for (Thread holder : holders) {
        holder.join();
      }
      Thread.sleep(A_SECOND.toMillis()); // it checks at most once a second
      assertEquals(1, hasty.transaction(StoreOnPostgresTest::one));
      assertTrue(hasty.check().inOrder());
    }
  }

  /** A server that accepts connections and never answers. */
  @Test
  @Timeout(60)
  void a_server_that_never_answers_is_away_and_nobody_hangs() throws IOException {
    try (ServerSocket silent = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        Database hasty =
            new Database(
                StoreAddress.onServer(
                    "jdbc:postgresql://127.0.0.1:" + silent.getLocalPort() + "/none", "a", "b"),
                A_SECOND)) {
      assertThrows(DeadlinePassed.class, () -> hasty.transaction(StoreOnPostgresTest::one));
      assertFalse(hasty.check().inOrder());
    }
  }
}
