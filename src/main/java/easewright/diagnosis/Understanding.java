package easewright.diagnosis;

import easewright.diagnosis.Answer.Measurement;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.Answer.SizeSystemNote;
import easewright.diagnosis.Answer.TriedAsGiven;
import easewright.diagnosis.Answer.Understood;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.EarlierSize;
import easewright.fitting.Fitting;
import easewright.fitting.GivenAmount;
import easewright.fitting.ReportedSign;
import easewright.fitting.Sides;
import easewright.inference.CauseProbability;
import easewright.inference.Observation;
import easewright.inference.Posterior;
import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.measure.Measures;
import easewright.measure.Measuring;
import easewright.rulebook.Catalog;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Says back what was understood, so that a misreading is seen before the advice is used. */
final class Understanding {
  private final Fitting fitting;
  private final Catalog catalog;
  private final Wording wording;

  private Understanding(Fitting fitting, RuleBookSource source) {
    this.fitting = fitting;
    this.catalog = source.catalog();
    this.wording = source.wording();
  }

  /**
   * @param unnamed whether nothing that tightens may be named, not even what was tried
   */
  static Understood of(Fitting fitting, Draft draft, RuleBookSource source, boolean unnamed) {
    Understanding said = new Understanding(fitting, source);
    return new Understood(
        fitting.units().name().toLowerCase(Locale.ROOT),
        fitting.family(),
        fitting.sheet() == null ? null : fitting.sheet().id(),
        fitting.sizeCut(),
        draft.label().map(label -> system(label, fitting, source)).orElse(null),
        ToileWords.garment(fitting, source),
        ToileWords.design(fitting, source.wording()),
        body(fitting, source.measures()),
        fitting.signs().stream().map(said::sign).toList(),
        orNull(fitting.fine()),
        orNull(said.tried(unnamed)));
  }

  private static SizeSystemNote system(LabelBody label, Fitting fitting, RuleBookSource source) {
    return new SizeSystemNote(
        label.reading().map(reading -> reading.region().wireName()).orElse(null),
        label.how().wireName(),
        label.says(source, new UnitFormatter(fitting.units())));
  }

  /** Signs that neither the likeliest story nor any cause in play explains. */
  static List<SignNote> unexplained(
      Fitting fitting, Posterior posterior, List<CauseProbability> inPlay, Knowledge knowledge) {
    double ratio = knowledge.parameter("unexplained-ratio");
    Set<String> left =
        posterior.unexplained(ratio).stream()
            .map(Observation::sign)
            .filter(
                sign ->
                    inPlay.stream()
                        .noneMatch(cause -> posterior.explains(cause.cause(), sign, ratio)))
            .collect(Collectors.toSet());
    return fitting.signs().stream()
        .filter(sign -> sign.present() && left.contains(sign.id()))
        .map(sign -> unexplained(sign, fitting, knowledge.source()))
        .toList();
  }

  private static SignNote unexplained(ReportedSign sign, Fitting fitting, RuleBookSource source) {
    SignNote note = new Understanding(fitting, source).sign(sign);
    return new SignNote(
        note.id(),
        note.name(),
        note.present(),
        note.place(),
        note.side(),
        note.degree(),
        note.amount(),
        note.when(),
        Soundness.isHarmless(sign, fitting, source) ? true : null);
  }

  private SignNote sign(ReportedSign sign) {
    return new SignNote(
        sign.id(),
        catalog.nameOf(sign.id()),
        sign.present(),
        sign.place(),
        sign.side(),
        sign.degree(),
        amount(sign.amount()),
        orNull(sign.when()),
        null);
  }

  private List<TriedAsGiven> tried(boolean unnamed) {
    Stream<TriedAsGiven> made =
        fitting.earlier().stream()
            .filter(one -> !unnamed || !tightens(one.adjustment()))
            .map(one -> change(one, null));
    Stream<TriedAsGiven> sizes =
        fitting.earlierSizes().stream().filter(one -> !unnamed).map(this::size);
    Stream<TriedAsGiven> held =
        fitting.trials().stream()
            .filter(one -> !unnamed || !tightens(one.adjustment()))
            .map(one -> change(one.asChange(one.outcome()), one.how()));
    return Stream.of(made, sizes, held).flatMap(all -> all).toList();
  }

  private boolean tightens(String adjustment) {
    return catalog.adjustments().get(adjustment).tightens();
  }

  private TriedAsGiven change(EarlierAdjustment one, String how) {
    return new TriedAsGiven(
        one.adjustment(),
        null,
        catalog.nameOf(one.adjustment()),
        how,
        amount(one.amount()),
        one.outcome(),
        names(one.better()),
        names(one.worse()));
  }

  private TriedAsGiven size(EarlierSize one) {
    return new TriedAsGiven(
        null,
        one.size(),
        wording.say("tried-size", "size", one.size()),
        null,
        null,
        one.outcome(),
        names(one.better()),
        names(one.worse()));
  }

  private List<String> names(List<String> signs) {
    return orNull(signs.stream().map(catalog::nameOf).toList());
  }

  private String amount(GivenAmount amount) {
    return amount == null ? null : amount.text(fitting.units(), wording);
  }

  private static <T> List<T> orNull(List<T> list) {
    return list.isEmpty() ? null : list;
  }

  private static List<Measurement> body(Fitting fitting, Measures measures) {
    List<Measurement> measurements = new ArrayList<>();
    for (Measures.OfBody one : measures.measurements()) {
      add(one.id(), fitting.body().named(one.id()), fitting, measurements);
      one.halves()
          .keySet()
          .forEach(half -> add(half, Sides.half(half, fitting), fitting, measurements));
    }
    return measurements;
  }

  private static void add(
      String name, Measured measured, Fitting fitting, List<Measurement> measurements) {
    if (measured != null) {
      measurements.add(
          new Measurement(
              name,
              measured.value().text(fitting.units()),
              tenth(measured.value().mm()),
              tenth(measured.sdMm()),
              Length.ofMm(measured.sdMm()).text(fitting.units()),
              how(fitting.measuredHow().getOrDefault(name, List.of()))));
    }
  }

  static double tenth(double mm) {
    return Math.round(mm * 10) / 10.0;
  }

  private static String how(List<Measuring> measurings) {
    return measurings.stream().map(Measuring::text).collect(Collectors.joining(", "));
  }
}
