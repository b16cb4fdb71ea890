package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import easewright.deadline.DeadlinePassed;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The store on a PostgreSQL server. */
class StoreOnPostgresTest extends StoreTest {
  private static final Duration A_SECOND = Duration.ofSeconds(1);

  /** As many as the pool has. */
  private static final int CONNECTIONS = 8;

  @Override
  StoreAddress empty() {
    return RealPostgres.emptyDatabase();
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

      done.countDown();
      for (Thread holder : holders) {
        holder.join();
      }
      assertEquals(1, hasty.transaction(StoreOnPostgresTest::one));
    }
  }

  /** A server that takes calls and says nothing. */
  @Test
  @Timeout(60)
  void a_server_that_never_answers_is_a_failure_and_nobody_hangs() throws IOException {
    try (ServerSocket silent = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        Database hasty =
            new Database(
                StoreAddress.onServer(
                    "jdbc:postgresql://127.0.0.1:" + silent.getLocalPort() + "/none", "a", "b"),
                A_SECOND)) {
      assertThrows(StoreFailure.class, () -> hasty.transaction(StoreOnPostgresTest::one));
    }
  }
}
