package easewright.diagnosis;

import easewright.diagnosis.Answer.MissingNote;
import easewright.fitting.Fitting;
import easewright.measure.Measures;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Names what was not given and what it would change, the most useful first. */
final class Missing {
  private final Fitting fitting;
  private final Wording wording;
  private final List<MissingNote> notes = new ArrayList<>();

  private Missing(Fitting fitting, Wording wording) {
    this.fitting = fitting;
    this.wording = wording;
  }

  /** What is missing, in a family whose part of the book says which measurements count. */
  static List<MissingNote> of(Fitting fitting, Draft draft, RuleBookSource source) {
    Missing missing = new Missing(fitting, source.wording());
    List<Measures.Missing> measurements = source.measures().missing();
    missing.noteIf(fitting.signs().isEmpty(), "/signs", "signs");
    missing.measured(measurements.stream().filter(Measures.Missing::first));
    missing.cut(draft);
    missing.measured(measurements.stream().filter(one -> !one.first()));
    return missing.notes;
  }

  private void cut(Draft draft) {
    noteIf(fitting.sheet() == null, "/pattern", "pattern");
    noteIf(fitting.sizeCut() == null, "/sizeCut", "size-cut");
    noteIf(
        draft.label().map(label -> label.how().isAssumed()).orElse(false),
        "/sizeSystem",
        "size-system");
    noteIf(!fitting.cloths().containsKey("main"), "/cloth/main", "cloth-main");
  }

  private void measured(Stream<Measures.Missing> measurements) {
    measurements
        .filter(one -> hasAll(one.once()) && !isGiven(one))
        .map(one -> new MissingNote(one.pointer(), one.says(), one.changes()))
        .forEach(notes::add);
  }

  private boolean isGiven(Measures.Missing one) {
    return hasAll(one.body())
        && one.garment().stream().allMatch(name -> fitting.garment().named(name) != null);
  }

  private boolean hasAll(List<String> body) {
    return body.stream().allMatch(name -> fitting.body().named(name) != null);
  }

  private void noteIf(boolean missing, String pointer, String what) {
    if (missing) {
      notes.add(
          new MissingNote(
              pointer, wording.say("missing-" + what), wording.say("missing-" + what + "-change")));
    }
  }
}
