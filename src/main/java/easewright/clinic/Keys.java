package easewright.clinic;

import easewright.clinic.AuditEntry.Deed;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Issues, verifies and revokes keys. */
public final class Keys {
  private static final String OTHERS = "clinic_id = :clinic and role <> 'WEARER'";

  private final Database database;
  private final Audit audit;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  Keys(Database database, Audit audit, Clock clock) {
    this.database = database;
    this.audit = audit;
    this.clock = clock;
  }

  /** The holder of a key; empty if it was never issued, or was revoked. */
  public Optional<Caller> holder(String text) {
    return database.mayHoldClinics() ? Key.parse(text).flatMap(this::holder) : Optional.empty();
  }

  private record Locked(KeyHash lock, Caller caller) {}

  private Optional<Caller> holder(Key key) {
    Optional<Locked> found =
        database.transaction(
            handle ->
                handle
                    .createQuery(
                        "select k.*, coalesce(c.nickname, k.name) as called from access_keys k"
                            + " left join cases c on c.id = k.case_id where k.id = :id")
                    .bind("id", key.id())
                    .map(
                        (row, context) ->
                            new Locked(
                                new KeyHash(row.getString("salt"), row.getString("hash")),
                                new Caller(
                                    row.getString("clinic_id"),
                                    Role.valueOf(row.getString("role")),
                                    key.id(),
                                    row.getString("called"),
                                    row.getString("case_id"))))
                    .findOne());
    return found
        .filter(locked -> locked.caller().role() == key.role() && locked.lock().opensTo(key))
        .map(Locked::caller);
  }

  /** Issues an organiser's or a helper's key. It cannot be shown again. */
  public Key issue(Caller caller, Role role, String name) {
    caller.mustBe(Role.ORGANISER);
    if (role == Role.WEARER) {
      throw new IllegalArgumentException("A wearer's link belongs to a case.");
    }
    return database.transaction(
        handle -> {
          audit.note(handle, caller, Deed.KEY_ISSUED, null);
          return issue(handle, caller.clinic(), role, name, null);
        });
  }

  /** Issues a case's link for its wearer; earlier links become invalid. */
  public Key issueLink(Caller caller, String caseId) {
    caller.mustBe(Role.ORGANISER, Role.HELPER);
    return database.transaction(
        handle -> {
          CaseRows.lock(handle, caller, caseId);
          handle
              .createUpdate("delete from access_keys where case_id = :case")
              .bind("case", caseId)
              .execute();
          audit.note(handle, caller, Deed.KEY_ISSUED, caseId);
          return issue(handle, caller.clinic(), Role.WEARER, "wearer", caseId);
        });
  }

  Key issue(Handle handle, String clinic, Role role, String name, String caseId) {
    Key key = Key.make(role, random);
    KeyHash lock = KeyHash.on(key, random);
    handle
        .createUpdate(
            "insert into access_keys (id, clinic_id, case_id, role, name, salt, hash, issued_ms)"
                + " values (:id, :clinic, :case, :role, :name, :salt, :hash, :now)")
        .bind("id", key.id())
        .bind("clinic", clinic)
        .bind("case", caseId)
        .bind("role", role.name())
        .bind("name", TextLimits.name(name))
        .bind("salt", lock.salt())
        .bind("hash", lock.hash())
        .bind("now", clock.millis())
        .execute();
    return key;
  }

  /** The valid keys, oldest first. */
  public List<KeyEntry> list(Caller caller) {
    caller.mustBe(Role.ORGANISER);
    return database.transaction(
        handle -> {
          audit.note(handle, caller, Deed.KEYS_READ, null);
          return rows(handle, caller.clinic());
        });
  }

  List<KeyEntry> rows(Handle handle, String clinic) {
    return handle
        .createQuery(
            "select id, role, name, case_id, issued_ms from access_keys"
                + " where clinic_id = :clinic order by issued_ms, id")
        .bind("clinic", clinic)
        .map(
            (row, context) ->
                new KeyEntry(
                    row.getString("id"),
                    Role.valueOf(row.getString("role")),
                    row.getString("name"),
                    row.getString("case_id"),
                    Instant.ofEpochMilli(row.getLong("issued_ms"))))
        .list();
  }

  /** The helpers and organisers a case can be handed to: id and name of their keys. */
  public List<Case.Holder> helpers(Caller caller) {
    caller.mustBe(Role.ORGANISER, Role.HELPER);
    return database.transaction(
        handle ->
            handle
                .createQuery(
                    "select id, name from access_keys where " + OTHERS + " order by name, id")
                .bind("clinic", caller.clinic())
                .map((row, context) -> new Case.Holder(row.getString("id"), row.getString("name")))
                .list());
  }

  /**
   * Revokes a key or a link at once; its holder's cases return to the queue.
   *
   * @throws LastKey if nobody could enter as organiser afterwards
   */
  public void revoke(Caller caller, String id) {
    caller.mustBe(Role.ORGANISER);
    database.transaction(
        handle -> {
          // Locks the clinic's row, so that two concurrent revocations cannot remove both last
          // keys.
          handle
              .createQuery("select id from clinics where id = :clinic <lock>")
              .bind("clinic", caller.clinic())
              .mapTo(String.class)
              .one();
          Role role = role(handle, caller, id);
          if (role == Role.ORGANISER && organisers(handle, caller) == 1) {
            throw new LastKey();
          }
          handle
              .createUpdate("delete from access_keys where id = :id and clinic_id = :clinic")
              .bind("id", id)
              .bind("clinic", caller.clinic())
              .execute();
          handle
              .createUpdate(
                  "update cases set holder = null, version = version + 1"
                      + " where clinic_id = :clinic and holder = :id")
              .bind("id", id)
              .bind("clinic", caller.clinic())
              .execute();
          audit.note(handle, caller, Deed.KEY_REVOKED, null);
          return null;
        });
  }

  private static Role role(Handle handle, Caller caller, String id) {
    if (!Key.isId(id)) {
      throw new NotHere();
    }
    return handle
        .createQuery("select role from access_keys where id = :id and clinic_id = :clinic")
        .bind("id", id)
        .bind("clinic", caller.clinic())
        .mapTo(Role.class)
        .findOne()
        .orElseThrow(NotHere::new);
  }

  private static int organisers(Handle handle, Caller caller) {
    return handle
        .createQuery(
            "select count(*) from access_keys where clinic_id = :clinic and role = 'ORGANISER'")
        .bind("clinic", caller.clinic())
        .mapTo(Integer.class)
        .one();
  }
}
