package easewright.clinic;

import easewright.clinic.AuditEntry.Deed;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.codec.binary.Base32;
import org.apache.commons.codec.digest.DigestUtils;
import org.jdbi.v3.core.Handle;

/**
 * Links that open one thing without a key: who waits in a clinic, or one reply for a limited time.
 * They show no measurements, no photos and nothing that a wearer wrote.
 */
public final class OpenLinks {
  /** How long a shared reply can be read. */
  public static final Duration SHARED_FOR = Duration.ofDays(14);

  private static final int MOST_WAITING = 50;

  /** 200 bits: cannot be guessed, so a plain hash is enough (see {@link KeyHash}). */
  private static final int SECRET_BYTES = 25;

  private static final String FORM = "[a-z2-7]{40}";

  private final Database database;
  private final Audit audit;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  OpenLinks(Database database, Audit audit, Clock clock) {
    this.database = database;
    this.audit = audit;
    this.clock = clock;
  }

  /** A clinic's waiting cases, the latest first. */
  public record Feed(String clinic, String name, List<Case> waiting) {}

  /**
   * A shared reply.
   *
   * @param clinic the name of the clinic
   * @param endsAt when the link ends
   */
  public record Shared(String clinic, Round.Reply reply, Instant endsAt) {}

  private record Link(String clinic, String caseId, int round, long endsMs) {}

  /** Issues the clinic's feed; the one before ends. Returns the link's secret. */
  public String issueFeed(Caller caller) {
    caller.mustBe(Role.ORGANISER);
    return database.transaction(
        handle -> {
          handle
              .createUpdate("delete from links where clinic_id = :clinic and case_id is null")
              .bind("clinic", caller.clinic())
              .execute();
          audit.note(handle, caller, Deed.FEED_ISSUED, null);
          return issue(handle, caller.clinic(), null, 0, 0);
        });
  }

  /**
   * Shares the reply to a round. Returns the link's secret.
   *
   * @throws NotHere if the round has no reply
   */
  public String share(Caller caller, String caseId, int round) {
    caller.mustBe(Role.ORGANISER, Role.HELPER);
    return database.transaction(
        handle -> {
          CaseRows.lock(handle, caller, caseId);
          if (!StoryRows.isReplied(handle, caseId, round)) {
            throw new NotHere();
          }
          audit.note(handle, caller, Deed.REPLY_SHARED, caseId);
          long ends = clock.instant().plus(SHARED_FOR).toEpochMilli();
          return issue(handle, caller.clinic(), caseId, round, ends);
        });
  }

  /** Ends every link to replies of a case at once. */
  public void endShares(Caller caller, String caseId) {
    caller.mustBe(Role.ORGANISER, Role.HELPER);
    database.transaction(
        handle -> {
          CaseRows.lock(handle, caller, caseId);
          audit.note(handle, caller, Deed.SHARES_ENDED, caseId);
          return handle
              .createUpdate("delete from links where case_id = :case")
              .bind("case", caseId)
              .execute();
        });
  }

  private String issue(Handle handle, String clinic, String caseId, int round, long ends) {
    byte[] drawn = new byte[SECRET_BYTES];
    random.nextBytes(drawn);
    String secret = new Base32().encodeToString(drawn).toLowerCase(Locale.ROOT);
    handle
        .createUpdate(
            "insert into links (id, clinic_id, case_id, no, hash, issued_ms, ends_ms)"
                + " values (:id, :clinic, :case, :no, :hash, :now, :ends)")
        .bind("id", Key.newId(random))
        .bind("clinic", clinic)
        .bind("case", caseId)
        .bind("no", round)
        .bind("hash", DigestUtils.sha256Hex(secret))
        .bind("now", clock.millis())
        .bind("ends", ends)
        .execute();
    return secret;
  }

  /** A name for a link that still opens something; it tells nothing of the secret. */
  public Optional<String> nameOf(String secret) {
    if (!secret.matches(FORM) || !database.mayHoldClinics()) {
      return Optional.empty();
    }
    return database
        .transaction(handle -> find(handle, secret))
        .map(link -> "link to " + (link.caseId() == null ? link.clinic() : link.caseId()));
  }

  private Optional<Link> find(Handle handle, String secret) {
    return handle
        .createQuery("select clinic_id, case_id, no, ends_ms from links where hash = :hash")
        .bind("hash", DigestUtils.sha256Hex(secret))
        .map(
            (row, context) ->
                new Link(
                    row.getString("clinic_id"),
                    row.getString("case_id"),
                    row.getInt("no"),
                    row.getLong("ends_ms")))
        .findOne()
        .filter(link -> link.endsMs() == 0 || clock.millis() < link.endsMs());
  }

  private Link follow(Handle handle, String secret) {
    if (!secret.matches(FORM)) {
      throw new NotHere();
    }
    return find(handle, secret).orElseThrow(NotHere::new);
  }

  /**
   * Who waits in the clinic of a feed.
   *
   * @throws NotHere if the link is no feed that is in force
   */
  public Feed feed(String secret) {
    mustExist();
    return database.transaction(
        handle -> {
          Link link = follow(handle, secret);
          if (link.caseId() != null) {
            throw new NotHere();
          }
          return new Feed(
              link.clinic(),
              name(handle, link.clinic()),
              CaseRows.all(handle, link.clinic()).stream()
                  .filter(one -> one.waitingSince() != null)
                  .sorted(Comparator.comparing(Case::changedAt).reversed())
                  .limit(MOST_WAITING)
                  .toList());
        });
  }

  /**
   * The reply a link opens.
   *
   * @throws NotHere if the link has ended, or the reply was withdrawn
   */
  public Shared shared(String secret) {
    mustExist();
    return database.transaction(
        handle -> {
          Link link = follow(handle, secret);
          return StoryRows.rounds(handle, link.caseId() == null ? "" : link.caseId()).stream()
              .filter(round -> round.number() == link.round() && round.reply() != null)
              .map(
                  round ->
                      new Shared(
                          name(handle, link.clinic()),
                          round.reply(),
                          Instant.ofEpochMilli(link.endsMs())))
              .findFirst()
              .orElseThrow(NotHere::new);
        });
  }

  private void mustExist() {
    if (!database.mayHoldClinics()) {
      throw new NotHere();
    }
  }

  private static String name(Handle handle, String clinic) {
    return handle
        .createQuery("select name from clinics where id = :id")
        .bind("id", clinic)
        .mapTo(String.class)
        .one();
  }
}
