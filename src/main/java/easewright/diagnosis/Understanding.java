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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
    Map<String, Measured> given = new LinkedHashMap<>();
    given.put("bust", body.bust());
    given.put("underbust", body.underbust());
    given.put("upperChest", body.upperChest());
    given.put("bustPointWidth", body.bustPointWidth());
    given.put("shoulderToBustPoint", body.shoulderToBustPoint());
    given.put("shoulderToUnderbust", body.shoulderToUnderbust());
    List<Measurement> measurements = new ArrayList<>();
    given.forEach(
        (name, measured) -> {
          if (measured != null) {
            measurements.add(
                new Measurement(
                    name,
                    measured.value().text(fitting.units()),
                    Math.round(measured.value().mm() * 10) / 10.0,
                    Math.round(measured.sdMm() * 10) / 10.0,
                    Length.ofMm(measured.sdMm()).text(fitting.units()),
                    fitting.measuredHow().getOrDefault(name, List.of()).stream()
                        .map(MeasuringMethod::wireName)
                        .collect(Collectors.joining(", "))));
          }
        });
    return measurements;
  }
}
