package easewright.request;

import easewright.measure.BodyMeasurements;
import easewright.measure.Measured;
import easewright.measure.MeasuringMethod;
import easewright.measure.Plausibility;
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

  private final Map<String, List<MeasuringMethod>> how = new LinkedHashMap<>();
  private final Map<String, List<Measured>> readings = new LinkedHashMap<>();
  private final MeasuringMethod usual;
  private final BodyMeasurements measurements;

  BodyReader(RequestField body, RequestField measuredBy, Plausibility plausibility) {
    this.usual = method(measuredBy, MeasuringMethod.TAPE_SELF);
    body =
        body.fields(
            "bust",
            "underbust",
            "upperChest",
            "bustPointWidth",
            "shoulderToBustPoint",
            "shoulderToUnderbust");
    this.measurements =
        new BodyMeasurements(
            measured(body, "bust", Measured::girth),
            measured(body, "underbust", Measured::girth),
            measured(body, "upperChest", Measured::girth),
            measured(body, "bustPointWidth", Measured::shortLength),
            measured(body, "shoulderToBustPoint", Measured::shortLength),
            measured(body, "shoulderToUnderbust", Measured::shortLength));
    for (Remark remark : plausibility.check(measurements)) {
      if (remark.kind() == Remark.Kind.IMPOSSIBLE) {
        body.at(remark.field()).impossible(remark.problem(), remark.remedy());
      }
    }
  }

  BodyMeasurements measurements() {
    return measurements;
  }

  /** The method of each reading, by the name of the measurement. */
  Map<String, List<MeasuringMethod>> how() {
    return how;
  }

  /** All readings, by the name of the measurement. */
  Map<String, List<Measured>> readings() {
    return readings;
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
    List<MeasuringMethod> methods = new ArrayList<>();
    for (RequestField one : items) {
      boolean withMethod = one.node().isObject();
      RequestField value = withMethod ? one.fields("value", "how").at("value") : one;
      if (!value.isWritten()) {
        value.needs("fault-measuring-missing");
      }
      MeasuringMethod method = withMethod ? method(one.at("how"), usual) : usual;
      Quantity length = value.writtenLength();
      if (length != null) {
        read.add(as.apply(length, method));
        methods.add(method);
      }
    }
    if (read.isEmpty()) {
      return null;
    }
    how.put(name, List.copyOf(methods));
    readings.put(name, List.copyOf(read));
    return read.size() == 1 ? read.get(0) : Measured.combined(read);
  }

  private static MeasuringMethod method(RequestField spot, MeasuringMethod otherwise) {
    String name = spot.oneOf(METHODS);
    return name == null ? otherwise : MeasuringMethod.named(name).orElseThrow();
  }
}
