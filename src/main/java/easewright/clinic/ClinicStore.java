package easewright.clinic;

import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;

/** Entry point to everything stored; opened on first use. */
public final class ClinicStore implements AutoCloseable {
  private final Database database;
  private final LocalDate clockRightOn;
  private final Keys keys;
  private final Clinics clinics;
  private final Cases cases;
  private final Rounds rounds;
  private final CasePhotos photos;
  private final OpenLinks links;
  private final Retention retention;
  private final Insights insights;
  private final Voices voices;

  /**
   * A store, not opened yet.
   *
   * @param patience how long work waits for other work; see {@link Database}
   */
  public ClinicStore(StoreAddress address, Clock clock, Duration patience) {
    this(address, clock, patience, null, StoreNews.UNHEARD);
  }

  /**
   * A store, not opened yet.
   *
   * @param clockRightOn a day on which the clock is confirmed to be right, in UTC, so that
   *     retention accepts a leap to it; null if unconfirmed
   * @param news notified when the store fails and when it recovers
   */
  public ClinicStore(
      StoreAddress address,
      Clock clock,
      Duration patience,
      LocalDate clockRightOn,
      StoreNews news) {
    this(new Database(address, patience, news), clock, clockRightOn);
  }

  private ClinicStore(Database database, Clock clock, LocalDate clockRightOn) {
    this.database = database;
    this.clockRightOn = clockRightOn;
    Audit audit = new Audit(clock);
    keys = new Keys(database, audit, clock);
    clinics = new Clinics(database, keys, audit, clock);
    cases = new Cases(database, audit, clock);
    rounds = new Rounds(database, cases, audit, clock);
    photos = new CasePhotos(database, audit, clock);
    links = new OpenLinks(database, audit, clock);
    retention =
        new Retention(database, audit, new RetentionClock(clock, clockRightOn, database.news()));
    insights = new Insights(database, audit);
    voices = new Voices(database, audit);
  }

  /** The same store with another clock, for events at other times. */
  public ClinicStore by(Clock other) {
    return new ClinicStore(database, other, clockRightOn);
  }

  /**
   * Whether the store works; checks it at most once a second. A store that does not exist yet is in
   * order.
   */
  public StoreCondition condition() {
    return database.check();
  }

  public Insights insights() {
    return insights;
  }

  public Voices voices() {
    return voices;
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

  public CasePhotos photos() {
    return photos;
  }

  public OpenLinks links() {
    return links;
  }

  public Retention retention() {
    return retention;
  }

  @Override
  public void close() {
    database.close();
  }
}
