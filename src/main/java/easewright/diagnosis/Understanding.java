package easewright.diagnosis;

import easewright.diagnosis.Answer.Measurement;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.Answer.Understood;
import easewright.measure.BodyMeasurements;
import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.measure.MeasuringMethod;
import easewright.measure.UnitSystem;
import easewright.rulebook.Catalog;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Says back what was understood, so that a misreading is seen before the advice is used. */
final class Understanding {
  private Understanding() {}

  static Understood of(Fitting fitting, Catalog catalog) {
    return new Understood(
        fitting.units().name().toLowerCase(Locale.ROOT),
        fitting.sheet() == null ? null : fitting.sheet().id(),
        fitting.sizeCut(),
        body(fitting),
        fitting.signs().stream().map(sign -> sign(sign, catalog, fitting.units())).toList());
  }

  static SignNote sign(ReportedSign sign, Catalog catalog, UnitSystem units) {
    return new SignNote(
        sign.id(),
        catalog.nameOf(sign.id()),
        sign.present(),
        sign.place(),
        sign.side(),
        sign.degree(),
        sign.amount() == null ? null : sign.amount().text(units));
  }

  private static List<Measurement> body(Fitting fitting) {
    BodyMeasurements body = fitting.body();
    List<Measurement> measurements = new ArrayList<>();
    add("bust", body.bust(), fitting, measurements);
    add("underbust", body.underbust(), fitting, measurements);
    add("upperChest", body.upperChest(), fitting, measurements);
    add("bustPointWidth", body.bustPointWidth(), fitting, measurements);
    add("shoulderToBustPoint", body.shoulderToBustPoint(), fitting, measurements);
    add("shoulderToUnderbust", body.shoulderToUnderbust(), fitting, measurements);
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

  private static double tenth(double mm) {
    return Math.round(mm * 10) / 10.0;
  }

  private static String how(List<MeasuringMethod> methods) {
    return methods.size() == 1
        ? methods.get(0).wireName()
        : methods.stream().map(MeasuringMethod::wireName).collect(Collectors.joining(", "));
  }
}
