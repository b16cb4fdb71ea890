package easewright.clinic;

import java.time.Clock;
import java.time.Duration;

/** Everything stored, by what is done with it; opened when first used. */
public final class ClinicStore implements AutoCloseable {
  private final Database database;
  private final Keys keys;
  private final Clinics clinics;
  private final Cases cases;
  private final Rounds rounds;
  private final Retention retention;
  private final Insights insights;

  /**
   * A store that is not opened yet.
   *
   * @param patience how long any work waits for others; see {@link Database}
   */
  public ClinicStore(StoreAddress address, Clock clock, Duration patience) {
    this(new Database(address, patience), clock);
  }

  private ClinicStore(Database database, Clock clock) {
    this.database = database;
    Audit audit = new Audit(clock);
    keys = new Keys(database, audit, clock);
    clinics = new Clinics(database, keys, audit, clock);
    cases = new Cases(database, audit, clock);
    rounds = new Rounds(database, cases, audit, clock);
    retention = new Retention(database, audit, clock);
    insights = new Insights(database, audit);
  }

  /** The same store by another clock, for what is told to have happened at other times. */
  public ClinicStore by(Clock other) {
    return new ClinicStore(database, other);
  }

  public Insights insights() {
    return insights;
  }

  public Keys keys() {
    return keys;
  }

  public Clinics clinics() {
    return clinics;
  }

  public Cases cases() {
    return cases;
  }

  public Rounds rounds() {
    return rounds;
  }

  public Retention retention() {
    return retention;
  }

  @Override
  public void close() {
    database.close();
  }
}
