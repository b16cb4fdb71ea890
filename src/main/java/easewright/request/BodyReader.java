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
import java.util.function.BiFunction;

/** Reads body measurements: one or several readings per place, with their error. */
final class BodyReader {
  /** Maximum number of readings per place, as many as anybody takes. */
  static final int MOST_READINGS = 10;

  private static final List<String> METHODS =
      Arrays.stream(MeasuringMethod.values()).map(MeasuringMethod::wireName).toList();

  private final Map<String, List<Measuring>> how = new LinkedHashMap<>();
  private final Map<String, List<Measured>> readings = new LinkedHashMap<>();
  private final List<Measures.Held> held;
  private final MeasuringMethod usual;
  private final BodyMeasurements measurements;

  BodyReader(RequestField body, RequestField measuredBy, KnownNames known) {
    this.held = known.book().catalog().practice().measures().held();
    this.usual = method(measuredBy, MeasuringMethod.TAPE_SELF);
    body =
        body.fields(
            "bust",
            "bustLeft",
            "bustRight",
            "underbust",
            "upperChest",
            "bustPointWidth",
            "shoulderToBustPoint",
            "shoulderToUnderbust");
    this.measurements =
        new BodyMeasurements(
            bust(body, known.book().parameter("sides-differ")),
            measured(body, "underbust", Measured::girth),
            measured(body, "upperChest", Measured::girth),
            measured(body, "bustPointWidth", Measured::shortLength),
            measured(body, "shoulderToBustPoint", Measured::shortLength),
            measured(body, "shoulderToUnderbust", Measured::shortLength));
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

  /** The girth as given, that of the two sides, or both combined. */
  private Measured bust(RequestField body, double sidesDiffer) {
    Measured whole = measured(body, "bust", Measured::girth);
    Measured left = measured(body, "bustLeft", Measured::halfGirth);
    Measured right = measured(body, "bustRight", Measured::halfGirth);
    boolean alone = body.at("bustLeft").isWritten() != body.at("bustRight").isWritten();
    if (alone) {
      body.at(body.at("bustLeft").isWritten() ? "bustRight" : "bustLeft")
          .needs("fault-side-missing");
    }
    if (left == null || right == null) {
      return whole;
    }
    Measured sum = Sides.girth(left, right, Double.POSITIVE_INFINITY);
    if (whole != null) {
      List<Measured> all = new ArrayList<>(readings.get("bust"));
      all.add(sum);
      readings.put("bust", List.copyOf(all));
    }
    return whole == null || Sides.of(left, right).differ(sidesDiffer)
        ? Sides.girth(left, right, sidesDiffer)
        : Measured.combined(List.of(whole, sum));
  }

  /** Where a remark on a measurement belongs: the bust may be written as its two sides. */
  private static String place(String name, RequestField body) {
    return name.equals("bust") && !body.at("bust").isWritten() ? "bustLeft" : name;
  }

  private Measured measured(
      RequestField body, String name, BiFunction<Quantity, MeasuringMethod, Measured> as) {
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
        Measured reading = as.apply(length, method);
        for (Measures.Held way : said) {
          reading = way.of().contains(name) ? way.corrected(name, reading) : reading;
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
      List<Measures.Held> ways = held.stream().filter(way -> way.field().equals(field)).toList();
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
