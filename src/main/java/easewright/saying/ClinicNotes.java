package easewright.saying;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import easewright.clinic.AuditEntry;
import easewright.clinic.Case;
import easewright.clinic.Clinic;
import easewright.clinic.ClinicVoice;
import easewright.clinic.Clinics;
import easewright.clinic.Key;
import easewright.clinic.KeyEntry;
import easewright.naming.KebabCase;
import easewright.saying.CaseNotes.StoryNote;
import java.util.List;

/** Clinics and keys in the contract's form; times are ISO 8601 in UTC. */
public final class ClinicNotes {
  private ClinicNotes() {}

  /** A clinic. */
  public record ClinicNote(
      String id, String name, int retentionDays, int version, String openedAt) {
    /** A clinic. */
    public static ClinicNote of(Clinic clinic) {
      return new ClinicNote(
          clinic.id(),
          clinic.name(),
          clinic.retentionDays(),
          clinic.version(),
          clinic.openedAt().toString());
    }
  }

  /** A new key with its text, shown this once. */
  public record IssuedKey(String id, String role, String key) {
    /** A new key with its text, shown this once. */
    public static IssuedKey of(Key key) {
      return new IssuedKey(key.id(), KebabCase.of(key.role()), key.text());
    }
  }

  /** A new clinic with its organiser's key. */
  public record OpenedClinic(ClinicNote clinic, IssuedKey key) {
    /** A clinic just opened, with its key. */
    public static OpenedClinic of(Clinics.Opened opened) {
      return new OpenedClinic(ClinicNote.of(opened.clinic()), IssuedKey.of(opened.key()));
    }
  }

  /** A key in a list. */
  public record KeyNote(
      String id, String role, String name, @JsonProperty("case") String caseId, String issuedAt) {
    /** A key without its text. */
    public static KeyNote of(KeyEntry key) {
      return new KeyNote(
          key.id(), KebabCase.of(key.role()), key.name(), key.caseId(), key.issuedAt().toString());
    }
  }

  /** A person who can hold a case. */
  public record HolderNote(String key, String name) {
    /** A helper or organiser. */
    public static HolderNote of(Case.Holder holder) {
      return new HolderNote(holder.key(), holder.name());
    }
  }

  /** How a clinic's replies are said; a line, units or a list that is not set is left out. */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record VoiceNote(
      int version,
      String tone,
      String units,
      String opening,
      String closing,
      List<ClinicVoice.Snippet> snippets,
      List<ClinicVoice.PatternName> patterns) {
    /** A voice with its version. */
    public static VoiceNote of(ClinicVoice.Kept kept) {
      ClinicVoice voice = kept.voice();
      return new VoiceNote(
          kept.version(),
          voice.plain() ? "plain" : "warm",
          voice.units(),
          voice.opening(),
          voice.closing(),
          voice.snippets(),
          voice.patterns());
    }
  }

  /** All of a clinic. */
  public record ExportNote(
      ClinicNote clinic, VoiceNote voice, List<KeyNote> keys, List<StoryNote> cases) {
    /** All of a clinic. */
    public static ExportNote of(Clinics.Export export) {
      return new ExportNote(
          ClinicNote.of(export.clinic()),
          VoiceNote.of(export.voice()),
          export.keys().stream().map(KeyNote::of).toList(),
          export.cases().stream().map(StoryNote::of).toList());
    }
  }

  /** An audit entry. */
  public record AuditNote(
      String at,
      String key,
      String name,
      String role,
      String deed,
      @JsonProperty("case") String caseId) {
    /** The note for an audit entry. */
    public static AuditNote of(AuditEntry entry) {
      return new AuditNote(
          entry.at().toString(),
          entry.key(),
          entry.name(),
          entry.role() == null ? null : KebabCase.of(entry.role()),
          KebabCase.of(entry.deed()),
          entry.caseId());
    }
  }
}
