package easewright.clinic;

import easewright.deadline.DeadlinePassed;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;

/**
 * The engine behind the store. It is opened, and its tables are created or updated, on first use: a
 * service without clinics pays nothing and leaves no file behind. After a fault it is retried, so
 * that it recovers once the cause is gone.
 */
public final class Database implements AutoCloseable {
  /** Interval between retries of a failed engine, and between checks. */
  private static final long PAUSE_NS = Duration.ofSeconds(1).toNanos();

  private final StoreAddress address;
  private final Engine engine;
  private final Duration patience;
  private final StoreNews news;
  private final ReentrantLock opening = new ReentrantLock();

  /** The embedded engine runs one transaction at a time. */
  private final ReentrantLock turn = new ReentrantLock(true);

  private final ReentrantLock checking = new ReentrantLock();

  private volatile Jdbi opened;
  private volatile StoreCondition condition = StoreCondition.IN_ORDER;
  private volatile long triedNs = System.nanoTime() - PAUSE_NS;
  private volatile long checkedNs = System.nanoTime() - PAUSE_NS;

  /**
   * An engine, not opened yet.
   *
   * @param patience how long work waits for its turn, for a connection, and for each statement,
   *     including locks held by others; whole seconds, at least one
   * @throws IllegalArgumentException if that is less than a second
   */
  public Database(StoreAddress address, Duration patience, StoreNews news) {
    if (patience.toSeconds() < 1) {
      throw new IllegalArgumentException("The store is to be given a second or more.");
    }
    this.address = address;
    this.patience = patience;
    this.news = news;
    engine =
        address.isEmbedded()
            ? new StoreFile(address, patience)
            : new StoreServer(address, patience);
  }

  /** The same without notifications. */
  public Database(StoreAddress address, Duration patience) {
    this(address, patience, StoreNews.UNHEARD);
  }

  /** Whether any clinic can exist; creates nothing. */
  boolean mayHoldClinics() {
    return opened != null || engine.mayHoldClinics();
  }

  /** The recipient of notifications. */
  StoreNews news() {
    return news;
  }

  /**
   * Runs work in a transaction. When it returns, the writes are durable.
   *
   * @throws easewright.deadline.DeadlinePassed if others kept it waiting too long; nothing is done
   * @throws StoreAway if the engine is unavailable; nothing is done
   * @throws StoreFailure if a statement fails; exceptions of the work itself are passed on
   */
  <T> T transaction(Function<Handle, T> work) {
    T done = inTransaction(work);
    if (!condition.inOrder()) {
      check();
    }
    return done;
  }

  private <T> T inTransaction(Function<Handle, T> work) {
    Supplier<T> whole = () -> tried(work);
    return address.isEmbedded() ? inTurn(turn, whole) : whole.get();
  }

  private <T> T inTurn(ReentrantLock lock, Supplier<T> work) {
    try {
      if (!lock.tryLock(patience.toMillis(), TimeUnit.MILLISECONDS)) {
        throw new DeadlinePassed();
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new DeadlinePassed();
    }
    try {
      return work.get();
    } finally {
      lock.unlock();
    }
  }

  private <T> T tried(Function<Handle, T> work) {
    try {
      return open().inTransaction(work::apply);
    } catch (JdbiException failed) {
      throw refusal(failed);
    }
  }

  private RuntimeException refusal(JdbiException failed) {
    if (engine.isWaitedFor(failed)) {
      return new DeadlinePassed();
    }
    if (Engine.isOfSomethingDeleted(failed)) {
      return new NotHere();
    }
    Optional<StoreCondition> fault = engine.fault(failed);
    if (fault.isEmpty()) {
      return new StoreFailure(failed);
    }
    if (engine.failed(failed)) {
      opened = null;
      triedNs = System.nanoTime();
    }
    return away(fault.get());
  }

  private StoreAway away(StoreCondition fault) {
    become(fault);
    return new StoreAway(fault);
  }

  private synchronized void become(StoreCondition now) {
    if (!condition.equals(now)) {
      condition = now;
      news.changed(now);
    }
  }

  private Jdbi open() {
    Jdbi ready = opened;
    return ready != null ? ready : inTurn(opening, this::openOnce);
  }

  private Jdbi openOnce() {
    if (opened != null) {
      return opened;
    }
    StoreCondition known = condition;
    if (!known.inOrder() && System.nanoTime() - triedNs < PAUSE_NS) {
      throw new StoreAway(known);
    }
    try {
      opened = engine.open();
      return opened;
    } catch (StoreAway unavailable) {
      become(unavailable.condition());
      throw unavailable;
    } catch (Exception | LinkageError failed) {
      throw unopened(failed);
    } finally {
      triedNs = System.nanoTime();
    }
  }

  private RuntimeException unopened(Throwable failed) {
    Optional<StoreCondition> fault = engine.fault(failed);
    if (fault.isPresent()) {
      return away(fault.get());
    }
    return engine.isWaitedFor(failed) ? new DeadlinePassed() : new StoreFailure(failed);
  }

  /**
   * Whether the store works; checks it at most once a second. After a failure it must complete a
   * write to count as recovered. Does not create a missing store.
   */
  StoreCondition check() {
    boolean needed = !condition.inOrder() || mayHoldClinics();
    if (needed && checking.tryLock()) {
      try {
        if (System.nanoTime() - checkedNs >= PAUSE_NS) {
          checkNow();
          checkedNs = System.nanoTime();
        }
      } finally {
        checking.unlock();
      }
    }
    return condition;
  }

  private void checkNow() {
    boolean inOrder = condition.inOrder();
    try {
      inTransaction(inOrder ? Database::read : Database::write);
      become(StoreCondition.IN_ORDER);
    } catch (StoreAway unavailable) {
      // The condition states the reason.
    } catch (DeadlinePassed waited) {
      become(
          new StoreCondition(
              address + " did not answer within " + patience.toSeconds() + " seconds.",
              "Look what keeps it busy; the service goes on by itself."));
    } catch (StoreFailure failed) {
      become(
          new StoreCondition(
              address + " does not hold what this service keeps there. " + failed.getMessage(),
              "Look whether another program has changed its tables."));
    }
  }

  private static Object read(Handle handle) {
    return handle.createQuery("select seen_ms from retention_clock").mapTo(Long.class).one();
  }

  private static Object write(Handle handle) {
    return handle.createUpdate("update retention_clock set seen_ms = seen_ms").execute();
  }

  /** Closes it. */
  @Override
  public void close() {
    opening.lock();
    try {
      opened = null;
      engine.close();
    } finally {
      opening.unlock();
    }
  }
}
