package easewright.check;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.MeasureAgainNote;
import easewright.diagnosis.UnitFormatter;
import easewright.fitting.Fitting;
import easewright.measure.Measures;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Finds measurements that are worth repeating before a size is cut by them. */
final class Doubts {
  private final RuleBookSource source;
  private final Wording wording;
  private final Measures measures;

  Doubts(RuleBookSource source) {
    this.source = source;
    this.wording = source.wording();
    this.measures = source.measures();
  }

  /** What is worth measuring again, and why. */
  List<MeasureAgainNote> again(SizeQuestion question, Answer judged) {
    List<MeasureAgainNote> notes = new ArrayList<>(judged.measureAgain());
    slips(question.fitting()).map(this::doubtNote).forEach(notes::add);
    notes.addAll(held(question.fitting()));
    double confidence = source.parameter("measurings-agree");
    question.readings().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .filter(entry -> !Agreement.holds(entry.getValue(), confidence))
        .forEach(
            entry ->
                notes.add(
                    new MeasureAgainNote(
                        "/body/" + entry.getKey(),
                        wording.say(
                            "measurings-differ", "measurement", measurement(entry.getKey())),
                        wording.say("measurings-differ-remedy"))));
    return notes;
  }

  /** Reported signs of a slip of the tape. */
  private Stream<String> slips(Fitting fitting) {
    return source.catalog().practice().sizing().measureAgain().stream()
        .filter(
            slip ->
                fitting.signs().stream().anyMatch(one -> one.present() && one.id().equals(slip)));
  }

  /** Whether the tape is known to have slipped, so that no size is to be cut by it. */
  boolean isKnown(Fitting fitting) {
    return slips(fitting).findAny().isPresent() || !held(fitting).isEmpty();
  }

  /** Girths taken in a way that calls for measuring again. */
  private List<MeasureAgainNote> held(Fitting fitting) {
    UnitFormatter shown = new UnitFormatter(fitting.units());
    return fitting.measuredHow().entrySet().stream()
        .flatMap(
            entry ->
                entry.getValue().stream()
                    .flatMap(one -> one.held().stream())
                    .distinct()
                    .filter(way -> way.again() && way.of().contains(entry.getKey()))
                    .map(
                        way ->
                            new MeasureAgainNote(
                                "/body/" + entry.getKey(),
                                wording.say(
                                    measures.addsMm(way, entry.getKey()) > 0
                                        ? "held-adds"
                                        : "held-takes",
                                    "measurement",
                                    measurement(entry.getKey()),
                                    "held",
                                    way.says(),
                                    "amount",
                                    shown.length(Math.abs(measures.addsMm(way, entry.getKey())))),
                                wording.say("held-remedy"))))
        .toList();
  }

  private MeasureAgainNote doubtNote(String sign) {
    SignEntry entry = source.catalog().signs().get(sign);
    return new MeasureAgainNote(
        "/body",
        wording.say("measurements-doubtful", "sign", entry.name()),
        wording.say("measurements-doubtful-remedy", "check", entry.check()));
  }

  private String measurement(String wireName) {
    return measures.names().get(wireName);
  }
}
