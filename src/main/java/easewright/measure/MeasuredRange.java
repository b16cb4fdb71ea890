package easewright.measure;

import easewright.wording.Blanks;
import java.util.Map;
import java.util.Optional;

/** The range of one measurement, mm, and the remark on a value outside it. */
final class MeasuredRange {
  private static final Unit[] TAPE_UNITS = {Unit.CM, Unit.INCH, Unit.MM};

  private final String id;
  private final String name;
  private final String how;
  private final double least;
  private final double most;
  private final double leastSurveyed;
  private final double usual;
  private final Map<String, String> sentences;

  MeasuredRange(Measures.OfBody range, Map<String, String> sentences) {
    this.id = range.id();
    this.name = range.name();
    this.how = range.how() == null ? "" : " " + range.how();
    this.least = Length.parse(range.least()).mm();
    this.most = Length.parse(range.most()).mm();
    this.leastSurveyed =
        range.leastSurveyed() == null ? 0 : Length.parse(range.leastSurveyed()).mm();
    this.usual = Length.parse(range.usual()).mm();
    this.sentences = sentences;
  }

  String id() {
    return id;
  }

  String name() {
    return name;
  }

  /** The measurement, if it was taken and is possible. */
  Optional<Measured> possible(BodyMeasurements body) {
    return Optional.ofNullable(body.named(id)).filter(one -> isPossible(one.value().mm()));
  }

  private boolean isPossible(double mm) {
    return mm >= least && mm <= most;
  }

  Optional<Remark> remark(BodyMeasurements body) {
    Measured measured = body.named(id);
    if (measured == null) {
      return Optional.empty();
    }
    double mm = measured.value().mm();
    if (!isPossible(mm)) {
      return Optional.of(
          remark(Remark.Kind.IMPOSSIBLE, "measure-impossible", asWritten(measured), measured));
    }
    // A large girth in inches entered as centimetres ("50 cm") is within the outer limits.
    if (mm < leastSurveyed) {
      return Optional.of(
          remark(Remark.Kind.UNLIKELY, "measure-below-survey", measured.text(), measured));
    }
    return Optional.empty();
  }

  private Remark remark(Remark.Kind kind, String key, String value, Measured measured) {
    boolean impossible = kind == Remark.Kind.IMPOSSIBLE;
    Blanks blanks =
        Blanks.of("measurement", name)
            .and("value", value)
            .and("least", text(impossible ? least : leastSurveyed, measured))
            .and("most", text(most, measured));
    String remedy =
        slip(measured)
            .map(meant -> blanks.and("meant", meant).fill(sentences.get(key + "-unit")))
            .orElseGet(() -> blanks.fill(sentences.get(key + "-remedy")) + how);
    return new Remark(id, kind, blanks.fill(sentences.get(key)), remedy);
  }

  /** The same number in another unit, if that is possible; if several are, the most typical one. */
  private Optional<String> slip(Measured measured) {
    double number = measured.value().mm() / measured.writtenIn().factor();
    String best = null;
    double nearest = Double.MAX_VALUE;
    for (Unit unit : TAPE_UNITS) {
      double mm = number * unit.factor();
      double distance = Math.abs(Math.log(mm / usual));
      if (unit != measured.writtenIn() && isPossible(mm) && distance < nearest) {
        best = Rounded.text(number, 2) + " " + unit.symbol();
        nearest = distance;
      }
    }
    return Optional.ofNullable(best);
  }

  private static String asWritten(Measured measured) {
    double number = measured.value().mm() / measured.writtenIn().factor();
    return Rounded.text(number, 2) + " " + measured.writtenIn().symbol();
  }

  private static String text(double mm, Measured like) {
    return Length.ofMm(mm).text(like.system());
  }
}
