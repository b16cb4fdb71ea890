package easewright.clinic;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.clinic.AuditEntry.Deed;
import easewright.pattern.PatternSheet;
import java.util.List;

/** Counts recurring causes and signs in a clinic. */
public final class Insights {
  private final Database database;
  private final Audit audit;

  Insights(Database database, Audit audit) {
    this.database = database;
    this.audit = audit;
  }

  /**
   * Counts.
   *
   * @param sheets the patterns with known sizes, which define neighbouring sizes
   */
  public Insight of(Caller caller, Insight.Asked asked, List<PatternSheet> sheets) {
    caller.mustBe(ORGANISER, HELPER);
    CountedRounds.Read read =
        database.transaction(
            handle -> {
              audit.note(handle, caller, Deed.INSIGHT_READ, null);
              return CountedRounds.of(handle, caller.clinic());
            });
    return Insight.of(read, asked, sheets);
  }
}
