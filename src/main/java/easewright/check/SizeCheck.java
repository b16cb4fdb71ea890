package easewright.check;

import easewright.check.SizeAnswer.MixedNote;
import easewright.check.SizeAnswer.SharpenNote;
import easewright.check.SizeAnswer.SizeNote;
import easewright.check.SizeAnswer.TakeNote;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.MeasureAgainNote;
import easewright.diagnosis.Diagnosis;
import easewright.diagnosis.Fitting;
import easewright.diagnosis.SheetChart;
import easewright.diagnosis.UnitFormatter;
import easewright.measure.BodyMeasurements;
import easewright.measure.Measured;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import easewright.size.Designation;
import easewright.size.SizeCell;
import easewright.size.SizeChance;
import easewright.size.SizeChart;
import easewright.size.SizeEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Determines the size to cut. Immutable and thread-safe. */
public final class SizeCheck {
  private final Diagnosis diagnosis;
  private final RuleBookSource source;
  private final Wording wording;

  public SizeCheck(RuleBook book, Diagnosis diagnosis) {
    this.diagnosis = diagnosis;
    this.source = book.source();
    this.wording = source.wording();
  }

  /** Finds the size, its uncertainty, and what would reduce it. */
  public SizeAnswer answer(SizeQuestion question) {
    Fitting fitting = question.fitting();
    Answer judged = diagnosis.answer(fitting);
    if (judged.isDanger()) {
      return SizeAnswer.ofDanger(judged);
    }
    Conversion conversion = new Conversion(fitting, wording);
    Measured bust = fitting.body().bust();
    Measured under = fitting.body().underbust();
    SizeAnswer.ConvertedNote converted =
        question.label().isEmpty()
            ? null
            : conversion.converted(question.label(), question.printedIn());
    if (bust == null || under == null) {
      return new SizeAnswer(
          judged.ruleBook(),
          judged.understood(),
          judged.cautions(),
          judged.notNow(),
          null,
          null,
          null,
          again(question, judged),
          List.of(),
          List.of(),
          converted);
    }
    SizeChart chart =
        fitting.sheet() == null ? question.system().chart() : SheetChart.of(fitting.sheet());
    SizeEstimate estimate = chart.estimate(bust, under);
    boolean offChart = estimate.outside() >= source.parameter("mixed-sizes-from");
    MixedNote mixed = offChart ? new MixedSizes(chart, wording).of(fitting).orElse(null) : null;
    List<MeasureAgainNote> again = again(question, judged);
    boolean reached = !offChart && !isDoubtful(fitting) && estimate.best().isPresent();
    Choosing choosing = new Choosing(question, judged, source);
    TakeNote take = reached ? choosing.take(estimate) : null;
    SizeCell least =
        take == null || !choosing.room() ? null : chart.cell(take.size()).orElseThrow();
    return new SizeAnswer(
        judged.ruleBook(),
        judged.understood(),
        judged.cautions(),
        judged.notNow(),
        size(question, chart, named(estimate, take, choosing.room()), least),
        take,
        mixed,
        again,
        sharpen(fitting, chart),
        // The labels for these exact girths may be smaller than a size chosen for room.
        choosing.room() ? List.of() : conversion.labels(under.value().mm(), bust.value().mm()),
        converted);
  }

  /** No size is named where none is to be cut and room comes first: any may be too small. */
  private static SizeEstimate named(SizeEstimate estimate, TakeNote take, boolean room) {
    return take == null && room ? new SizeEstimate(List.of(), estimate.outside()) : estimate;
  }

  /**
   * How probable each size is.
   *
   * @param least no smaller size than this is named; null if any may be
   */
  private SizeNote size(
      SizeQuestion question, SizeChart chart, SizeEstimate estimate, SizeCell least) {
    SizeCell best = least != null ? least : estimate.best().map(SizeChance::cell).orElse(null);
    return new SizeNote(
        question.fitting().sheet() != null
            ? question.fitting().sheet().id()
            : wording.say("system-" + question.system().name().toLowerCase(Locale.ROOT)),
        best == null ? null : new Answer.SizeChance(best.id(), estimate.probability(best.id())),
        estimate.chances().stream()
            .filter(chance -> !chance.cell().equals(best))
            .filter(chance -> chance.probability() >= source.parameter("size-neighbour"))
            .filter(chance -> least == null || chart.isAtLeast(chance.cell(), least))
            .map(SizeCheck::chance)
            .toList(),
        best == null || least != null
            ? List.of()
            : chart.sisters(best).stream()
                .map(c -> new Answer.SizeChance(c.id(), estimate.probability(c.id())))
                .toList(),
        estimate.outside(),
        best == null ? 0 : sum(estimate, cell -> cell.band().equals(best.band())),
        best == null || best.cup() == null
            ? null
            : sum(estimate, cell -> best.cup().equals(cell.cup())),
        estimate.between(source.parameter("clear-choice-of-size")),
        question.fitting().sheet() != null || best == null || least != null
            ? null
            : letter(question, best));
  }

  /** Why the plain rule gives other letters than the recommended size; null where it does not. */
  private String letter(SizeQuestion question, SizeCell best) {
    BodyMeasurements body = question.fitting().body();
    return question
        .system()
        .of(body.underbust().value(), body.bust().value())
        .map(Designation::label)
        .filter(label -> !label.equals(best.id()))
        .map(label -> wording.say("size-letter-differs", "label", label, "size", best.id()))
        .orElse(null);
  }

  private static double sum(SizeEstimate estimate, Predicate<SizeCell> of) {
    return estimate.chances().stream()
        .filter(chance -> of.test(chance.cell()))
        .mapToDouble(SizeChance::probability)
        .sum();
  }

  private static Answer.SizeChance chance(SizeChance chance) {
    return new Answer.SizeChance(chance.cell().id(), chance.probability());
  }

  private List<MeasureAgainNote> again(SizeQuestion question, Answer judged) {
    List<MeasureAgainNote> notes = new ArrayList<>(judged.measureAgain());
    slips(question.fitting()).map(this::doubtNote).forEach(notes::add);
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

  /** Signs reported that tell of a slip of the tape. */
  private Stream<String> slips(Fitting fitting) {
    return source.catalog().practice().sizing().measureAgain().stream()
        .filter(
            slip ->
                fitting.signs().stream().anyMatch(one -> one.present() && one.id().equals(slip)));
  }

  private boolean isDoubtful(Fitting fitting) {
    return slips(fitting).findAny().isPresent();
  }

  private MeasureAgainNote doubtNote(String sign) {
    SignEntry entry = source.catalog().signs().get(sign);
    return new MeasureAgainNote(
        "/body",
        wording.say("measurements-doubtful", "sign", entry.name()),
        wording.say("measurements-doubtful-remedy", "check", entry.check()));
  }

  private String measurement(String wireName) {
    return source.catalog().practice().measures().names().get(wireName);
  }

  private List<SharpenNote> sharpen(Fitting fitting, SizeChart chart) {
    Measured bust = fitting.body().bust();
    Measured under = fitting.body().underbust();
    Sharpening sharpening = new Sharpening(chart);
    double now = sharpening.now(bust, under);
    double betterBust = sharpening.withBetterBust(bust, under);
    double betterUnder = sharpening.withBetterUnderbust(bust, under);
    boolean bustFirst = betterBust >= betterUnder;
    SharpenNote ofBust = note("bust", fitting, bust, now, betterBust, bustFirst);
    SharpenNote ofUnder = note("underbust", fitting, under, now, betterUnder, !bustFirst);
    return bustFirst ? List.of(ofBust, ofUnder) : List.of(ofUnder, ofBust);
  }

  private SharpenNote note(
      String name, Fitting fitting, Measured measured, double now, double then, boolean first) {
    UnitFormatter shown = new UnitFormatter(fitting.units());
    boolean worthwhile = then - now >= source.parameter("worth-measuring-again");
    return new SharpenNote(
        name,
        measured.sdMm(),
        shown.length(measured.sdMm()),
        now,
        then,
        Math.max(0, then - now),
        worthwhile,
        wording.say(
            !worthwhile ? "sharpen-little" : first ? "sharpen" : "sharpen-too",
            "measurement",
            measurement(name),
            "now",
            shown.percent(now),
            "then",
            shown.percent(then)));
  }
}
