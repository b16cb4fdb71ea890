package easewright.clinic;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.clinic.AuditEntry.Deed;
import java.io.UncheckedIOException;
import org.jdbi.v3.core.Handle;

/** Reads and changes how a clinic's replies are said. */
public final class Voices {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Database database;
  private final Audit audit;

  Voices(Database database, Audit audit) {
    this.database = database;
    this.audit = audit;
  }

  /** The voice, to be looked at or changed. */
  public ClinicVoice.Kept read(Caller caller) {
    caller.mustBe(ORGANISER, HELPER);
    return database.transaction(
        handle -> {
          audit.note(handle, caller, Deed.VOICE_READ, null);
          return row(handle, caller.clinic());
        });
  }

  /** The voice in which to answer a fitting of this caller's clinic. */
  public ClinicVoice of(Caller caller) {
    return database.transaction(handle -> row(handle, caller.clinic())).voice();
  }

  /**
   * Changes the voice.
   *
   * @param seen the version the change is based on
   * @throws Overtaken if it has been changed since
   */
  public ClinicVoice.Kept change(Caller caller, int seen, ClinicVoice voice) {
    caller.mustBe(ORGANISER, HELPER);
    return database.transaction(
        handle -> {
          int changed =
              handle
                  .createUpdate(
                      "update clinics set voice = :voice, voice_version = voice_version + 1"
                          + " where id = :id and voice_version = :seen")
                  .bind("voice", written(voice))
                  .bind("id", caller.clinic())
                  .bind("seen", seen)
                  .execute();
          ClinicVoice.Kept now = row(handle, caller.clinic());
          if (changed == 0) {
            throw new Overtaken(now.version(), null);
          }
          audit.note(handle, caller, Deed.VOICE_CHANGED, null);
          return now;
        });
  }

  static ClinicVoice.Kept row(Handle handle, String clinic) {
    return handle
        .createQuery("select voice, voice_version from clinics where id = :clinic_id")
        .bind("clinic_id", clinic)
        .map(
            (row, context) ->
                new ClinicVoice.Kept(read(row.getString("voice")), row.getInt("voice_version")))
        .findOne()
        .orElseThrow(NotHere::new);
  }

  private static ClinicVoice read(String json) {
    try {
      return json == null ? ClinicVoice.USUAL : JSON.readValue(json, ClinicVoice.class);
    } catch (JsonProcessingException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private static String written(ClinicVoice voice) {
    try {
      return JSON.writeValueAsString(voice);
    } catch (JsonProcessingException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
