package easewright.request;

import easewright.fitting.Sides;
import easewright.measure.BodyMeasurements;
import easewright.measure.Measured;
import easewright.measure.Measures;
import easewright.measure.Measuring;
import easewright.measure.MeasuringMethod;
import easewright.measure.Quantity;
import easewright.measure.Remark;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Reads the body measurements of a family of garments: one or several readings per place, with
 * their error.
 */
final class BodyReader {
  /** Maximum number of readings per place, as many as anybody takes. */
  static final int MOST_READINGS = 10;

  private static final List<String> METHODS =
      Arrays.stream(MeasuringMethod.values()).map(MeasuringMethod::wireName).toList();

  private final Map<String, List<Measuring>> how = new LinkedHashMap<>();
  private final Map<String, List<Measured>> readings = new LinkedHashMap<>();
  private final Measures measures;
  private final MeasuringMethod usual;
  private final BodyMeasurements measurements;

  BodyReader(RequestField body, RequestField measuredBy, KnownNames known) {
    this.measures = known.book().measures();
    this.usual = method(measuredBy, MeasuringMethod.TAPE_SELF);
    body = body.fields(measures.names().keySet().toArray(String[]::new));
    Map<String, Measured> taken = new LinkedHashMap<>();
    for (Measures.OfBody one : measures.measurements()) {
      Measured found = measured(body, one, known.book().parameter("sides-differ"));
      if (found != null) {
        taken.put(one.id(), found);
      }
    }
    this.measurements = new BodyMeasurements(taken);
    for (Remark remark : known.plausibility().check(measurements)) {
      if (remark.kind() == Remark.Kind.IMPOSSIBLE) {
        body.at(place(remark.field(), body)).impossible(remark.problem(), remark.remedy());
      }
    }
  }

  BodyMeasurements measurements() {
    return measurements;
  }

  /** The method of each reading, by the name of the measurement. */
  Map<String, List<Measuring>> how() {
    return how;
  }

  /** All readings, by the name of the measurement. */
  Map<String, List<Measured>> readings() {
    return readings;
  }

  /** As given of the whole, that of the two sides, or both combined. */
  private Measured measured(RequestField body, Measures.OfBody one, double sidesDiffer) {
    Measured whole = measured(body, one.id(), one::sdMm);
    if (one.halves().isEmpty()) {
      return whole;
    }
    List<String> halves = List.copyOf(one.halves().keySet());
    Measured left = measured(body, halves.get(0), one::halfSdMm);
    Measured right = measured(body, halves.get(1), one::halfSdMm);
    boolean written = body.at(halves.get(0)).isWritten();
    if (written != body.at(halves.get(1)).isWritten()) {
      body.at(halves.get(written ? 1 : 0)).needs("fault-side-missing");
    }
    if (left == null || right == null) {
      return whole;
    }
    Measured sum = Sides.girth(left, right, Double.POSITIVE_INFINITY);
    if (whole != null) {
      List<Measured> all = new ArrayList<>(readings.get(one.id()));
      all.add(sum);
      readings.put(one.id(), List.copyOf(all));
    }
    return whole == null || Sides.of(left, right).differ(sidesDiffer)
        ? Sides.girth(left, right, sidesDiffer)
        : Measured.combined(List.of(whole, sum));
  }

  /** Where a remark on a measurement belongs: it may be written as its two sides. */
  private String place(String name, RequestField body) {
    return body.at(name).isWritten()
        ? name
        : measures.measurements().stream()
            .filter(one -> one.id().equals(name))
            .flatMap(one -> one.halves().keySet().stream())
            .findFirst()
            .orElse(name);
  }

  private Measured measured(
      RequestField body, String name, ToDoubleFunction<MeasuringMethod> sdMm) {
    RequestField spot = body.at(name);
    List<RequestField> items =
        spot.node().isArray()
            ? spot.items(MOST_READINGS)
            : spot.isWritten() ? List.of(spot) : List.of();
    if (spot.node().isArray() && spot.node().isEmpty()) {
      spot.cannotBeRead("fault-no-measuring");
    }
    List<Measured> read = new ArrayList<>();
    List<Measuring> measurings = new ArrayList<>();
    for (RequestField one : items) {
      boolean withMethod = one.node().isObject();
      RequestField value =
          withMethod ? one.fields("value", "how", "over", "tape", "breath").at("value") : one;
      if (!value.isWritten()) {
        value.needs("fault-measuring-missing");
      }
      MeasuringMethod method = withMethod ? method(one.at("how"), usual) : usual;
      List<Measures.Held> said = withMethod ? held(one) : List.of();
      Quantity length = value.writtenLength();
      if (length != null) {
        Measured reading = Measured.of(length, sdMm.applyAsDouble(method));
        for (Measures.Held way : said) {
          reading = way.of().contains(name) ? measures.corrected(way, name, reading) : reading;
        }
        read.add(reading);
        measurings.add(new Measuring(method, reading, said));
      }
    }
    if (read.isEmpty()) {
      return null;
    }
    how.put(name, List.copyOf(measurings));
    readings.put(name, List.copyOf(read));
    return read.size() == 1 ? read.get(0) : Measured.combined(read);
  }

  /** How the tape was held, as one measurement states it. */
  private List<Measures.Held> held(RequestField measuring) {
    List<Measures.Held> said = new ArrayList<>();
    for (String field : List.of("over", "tape", "breath")) {
      if (!measuring.at(field).isWritten()) {
        continue;
      }
      List<Measures.Held> ways =
          measures.held().stream().filter(way -> way.field().equals(field)).toList();
      String named = measuring.at(field).oneOf(ways.stream().map(Measures.Held::id).toList());
      ways.stream().filter(way -> way.id().equals(named)).forEach(said::add);
    }
    return said;
  }

  private static MeasuringMethod method(RequestField spot, MeasuringMethod otherwise) {
    String name = spot.oneOf(METHODS);
    return name == null ? otherwise : MeasuringMethod.named(name).orElseThrow();
  }
}
