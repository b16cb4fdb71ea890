package easewright.measure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is measured for one family of garments, and remarks on values that are unlikely: {@code
 * measures.yaml} in its folder of a rule book. Lengths are written with their unit.
 *
 * @param measurements of the body, in the order of remarks
 * @param comparisons usual relations between two measurements
 * @param orders which of two must be larger
 * @param held ways to hold the tape that a measuring may name
 * @param garment measurements of the finished toile
 * @param figures numbers computed from measurements
 * @param edges edges of the toile that can be reported with their elastic
 * @param missing what to ask for where it was not given, the most useful first
 */
public record Measures(
    List<OfBody> measurements,
    List<Comparison> comparisons,
    List<Order> orders,
    List<Held> held,
    List<OfGarment> garment,
    List<FigureFormula> figures,
    List<String> edges,
    List<Missing> missing) {

  /** Of a family without measurements. */
  public static final Measures NONE = new Measures(null, null, null, null, null, null, null, null);

  public Measures {
    measurements = orNone(measurements);
    comparisons = orNone(comparisons);
    orders = orNone(orders);
    held = orNone(held);
    garment = orNone(garment);
    figures = orNone(figures);
    edges = orNone(edges);
    missing = orNone(missing);
  }

  private static <T> List<T> orNone(List<T> list) {
    return list == null ? List.of() : List.copyOf(list);
  }

  /**
   * What every measurement of the body is called in a sentence, halves too, by name in requests.
   */
  public Map<String, String> names() {
    Map<String, String> names = new LinkedHashMap<>();
    measurements.forEach(
        one -> {
          names.put(one.id(), one.name());
          names.putAll(one.halves());
        });
    return names;
  }

  /** Whether what systems of sizes go by is measured; otherwise there is no size to be found. */
  public boolean hasSizes() {
    return names().keySet().containsAll(BodyMeasurements.OF_SIZES);
  }

  /** Words that writers say for each measurement of the body, by its name in requests. */
  public Map<String, List<String>> said() {
    Map<String, List<String>> said = new LinkedHashMap<>();
    measurements.forEach(one -> said.put(one.id(), one.say()));
    return said;
  }

  /**
   * What a way to hold the tape adds to a reading on average, mm; negative if it takes something
   * off. Of a half it adds half as much as of the whole.
   *
   * @param measurement name in requests
   */
  public double addsMm(Held way, String measurement) {
    return share(measurement) * (mm(way.adds()) - mm(way.takes()));
  }

  /** The reading as it would be with the tape held as asked, with the error of that guess. */
  public Measured corrected(Held way, String measurement, Measured reading) {
    return new Measured(
        Length.ofMm(Math.max(0, reading.value().mm() - addsMm(way, measurement))),
        Math.hypot(reading.sdMm(), share(measurement) * mm(way.varies())),
        reading.writtenIn());
  }

  private double share(String measurement) {
    return measurements.stream().anyMatch(one -> one.halves().containsKey(measurement)) ? 0.5 : 1;
  }

  private static double mm(String length) {
    return length == null ? 0 : Length.parse(length).mm();
  }

  /**
   * One measurement of the body.
   *
   * @param id its name in requests, such as "bust"
   * @param name its name in a sentence
   * @param as "girth" for a large girth; "short" for a length, a width or a small girth
   * @param halves names in requests of its left and its right half, each to its name in a sentence;
   *     empty if it is measured as a whole only
   * @param least minimum a tape can show, a length
   * @param most maximum, a length
   * @param leastSurveyed minimum of a survey, a length; null if no survey has it
   * @param usual typical value, a length
   * @param how how to take it, a sentence; null if nothing is said of it
   * @param say words that writers say for it
   */
  public record OfBody(
      String id,
      String name,
      String as,
      Map<String, String> halves,
      String least,
      String most,
      String leastSurveyed,
      String usual,
      String how,
      List<String> say,
      String source) {

    public OfBody {
      halves = halves == null ? Map.of() : new LinkedHashMap<>(halves);
      say = orNone(say);
    }

    /** Error of one reading, mm, one standard deviation. */
    public double sdMm(MeasuringMethod method) {
      return as.equals("girth") ? method.girthSdMm() : method.shortSdMm();
    }

    /** The same of a half. Both err alike and together by as much as the whole (computed). */
    public double halfSdMm(MeasuringMethod method) {
      return sdMm(method) / Math.sqrt(2);
    }
  }

  /**
   * One measurement of the finished toile.
   *
   * @param id its name in requests, such as "underband"
   * @param name its name in a sentence
   * @param least id of the parameter with its minimum
   * @param most id of the parameter with its maximum
   */
  public record OfGarment(String id, String name, String least, String most) {}

  /**
   * Something to ask for where it was not given. One of body and garment is set.
   *
   * @param body measurements of the body, all of which are needed
   * @param garment measurements of the toile, likewise
   * @param first whether it comes before the pattern and the cloth
   * @param once measurements of the body without which it is not asked for
   * @param says what is missing
   * @param changes what it would change
   */
  public record Missing(
      List<String> body,
      List<String> garment,
      boolean first,
      List<String> once,
      String says,
      String changes) {

    public Missing {
      body = orNone(body);
      garment = orNone(garment);
      once = orNone(once);
    }

    /** Its place in a request (RFC 6901): the measurement, or all of the body if several count. */
    public String pointer() {
      String of = body.isEmpty() ? "/garment" : "/body";
      List<String> names = body.isEmpty() ? garment : body;
      return names.size() == 1 ? of + "/" + names.get(0) : of;
    }
  }

  /**
   * Two measurements compared.
   *
   * @param as "ratio" or "difference", of the first and the second
   * @param low limit below which both are doubted: a number for a ratio, a length for a difference
   * @param high limit above which both are doubted
   * @param surveyed whether the limits are those of 99 of 100 in a survey, which is then said
   */
  public record Comparison(
      String id,
      String first,
      String second,
      String as,
      String low,
      String high,
      boolean surveyed,
      String slipWhenLow,
      String slipWhenHigh,
      String source) {}

  /**
   * A way to hold the tape, or what it lay on.
   *
   * @param id what a measuring names, such as "padded-bra"
   * @param field the measuring's field that names it: "over", "tape" or "breath"
   * @param of names of the measurements it changes; empty for none
   * @param adds what it adds to a reading on average, a length; null if it adds nothing
   * @param takes what it takes off a reading on average, a length; null if it takes nothing
   * @param varies how far that varies, a length, one standard deviation
   * @param again whether to measure again before a size is cut
   * @param says the way in a sentence, after a measurement
   */
  public record Held(
      String id,
      String field,
      List<String> of,
      String adds,
      String takes,
      String varies,
      boolean again,
      String says,
      String source) {}

  /**
   * Two measurements of which one must be larger.
   *
   * @param field name of the one a remark refers to
   * @param kind "impossible" or "unlikely"
   * @param samePlace maximum difference at which both were probably taken at the same place; a
   *     length, or null
   * @param samePlaceRemedy what to do then, or null
   */
  public record Order(
      String larger,
      String smaller,
      String field,
      String kind,
      String problem,
      String remedy,
      String samePlace,
      String samePlaceRemedy,
      String source) {}
}
