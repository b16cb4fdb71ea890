package easewright.diagnosis;

import static java.util.stream.Collectors.toSet;

import easewright.diagnosis.Answer.ChangeNote;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions;
import java.util.List;
import java.util.Set;

/** What of a fitting leads to something tighter, for answers that must not speak of that. */
final class Tightening {
  private final Knowledge knowledge;
  private final Conclusions said;
  private final Set<String> outcomes;

  Tightening(Knowledge knowledge, Conclusions said) {
    this.knowledge = knowledge;
    this.said = said;
    this.outcomes =
        knowledge.catalog().adjustments().values().stream()
            .filter(AdjustmentEntry::tightens)
            .map(AdjustmentEntry::id)
            .flatMap(id -> List.of(Knowledge.helped(id), Knowledge.worse(id)).stream())
            .map(Report::wireId)
            .collect(toSet());
  }

  /** Whether some change that tightens cures this cause here. */
  boolean cures(String cause) {
    return knowledge.cures(List.of(cause), said).stream()
        .anyMatch(cure -> knowledge.catalog().adjustments().get(cure.adjustment()).tightens());
  }

  /** Whether a report is what became of a change that tightens. */
  boolean wasTried(String sign) {
    return outcomes.contains(Report.wireId(sign));
  }

  /** Whether some of these changes to the evidence is about a change that tightens. */
  boolean isAmong(List<ChangeNote> changes) {
    return changes.stream().map(ChangeNote::id).anyMatch(this::wasTried);
  }
}
