package easewright.answering;

import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Insight;
import easewright.pattern.PatternSheets;
import easewright.saying.InsightNotes;
import easewright.saying.InsightNotes.InsightNote;
import jakarta.inject.Singleton;

/** Counts recurring causes and signs in a clinic. */
@Singleton
public class InsightService {
  private final ClinicStore store;
  private final RuleBookService rules;
  private final PatternSheets sheets;

  InsightService(ClinicStore store, RuleBookService rules, PatternSheets sheets) {
    this.store = store;
    this.rules = rules;
    this.sheets = sheets;
  }

  /**
   * The insight of a caller's clinic.
   *
   * @throws easewright.clinic.NotAllowed if the caller's role may not see it
   */
  public InsightNote of(Caller caller, Insight.Asked asked) {
    Insight insight = store.insights().of(caller, asked, sheets.known());
    return InsightNotes.of(insight, rules.edition().book().catalog(), sheets.known());
  }
}
