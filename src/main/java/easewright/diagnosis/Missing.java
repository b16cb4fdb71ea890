package easewright.diagnosis;

import easewright.diagnosis.Answer.MissingNote;
import easewright.fitting.Fitting;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;

/** Names what was not given and what it would change, the most useful first. */
final class Missing {
  private final Fitting fitting;
  private final Draft draft;
  private final Wording wording;
  private final List<MissingNote> notes = new ArrayList<>();

  private Missing(Fitting fitting, Draft draft, Wording wording) {
    this.fitting = fitting;
    this.draft = draft;
    this.wording = wording;
  }

  static List<MissingNote> of(Fitting fitting, Draft draft, Wording wording) {
    Missing missing = new Missing(fitting, draft, wording);
    missing.look();
    return missing.notes;
  }

  private void look() {
    boolean girths = fitting.body().bust() != null && fitting.body().underbust() != null;
    noteIf(fitting.signs().isEmpty(), "/signs", "signs");
    noteIf(!girths, "/body", "body");
    noteIf(fitting.sheet() == null, "/pattern", "pattern");
    noteIf(fitting.sizeCut() == null, "/sizeCut", "size-cut");
    noteIf(
        draft.label().map(label -> label.how().isAssumed()).orElse(false),
        "/sizeSystem",
        "size-system");
    noteIf(!fitting.cloths().containsKey("main"), "/cloth/main", "cloth-main");
    noteIf(fitting.garment().underband() == null, "/garment/underband", "garment-underband");
    noteIf(
        girths && fitting.body().bustPointWidth() == null,
        "/body/bustPointWidth",
        "bust-point-width");
    noteIf(
        girths && fitting.body().shoulderToUnderbust() == null,
        "/body/shoulderToUnderbust",
        "shoulder-to-underbust");
  }

  private void noteIf(boolean missing, String pointer, String what) {
    if (missing) {
      notes.add(
          new MissingNote(
              pointer, wording.say("missing-" + what), wording.say("missing-" + what + "-change")));
    }
  }
}
