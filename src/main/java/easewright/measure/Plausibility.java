package easewright.measure;

import easewright.wording.Blanks;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Finds measurements that are impossible or worth repeating. Limits and texts of remarks come from
 * a rule book.
 */
public final class Plausibility {
  private final Map<String, MeasuredRange> ranges = new LinkedHashMap<>();
  private final List<MeasuredPair> pairs;
  private final List<Measures.Order> orders;

  /**
   * @param sentences of the book's wording, by key
   * @throws RuntimeException if a number of the book cannot be read; its check reports it before
   */
  public Plausibility(Measures measures, Map<String, String> sentences) {
    measures.measurements().forEach(one -> ranges.put(one.id(), new MeasuredRange(one, sentences)));
    this.pairs =
        measures.comparisons().stream()
            .map(
                one ->
                    new MeasuredPair(
                        one, ranges.get(one.first()), ranges.get(one.second()), sentences))
            .toList();
    this.orders = measures.orders();
  }

  /**
   * All remarks, the impossible ones first, in the order of the measurements. Empty if there are
   * none.
   */
  public List<Remark> check(BodyMeasurements body) {
    List<Remark> remarks = new ArrayList<>();
    ranges.values().forEach(range -> range.remark(body).ifPresent(remarks::add));
    List<Measures.Order> inverted = orders.stream().filter(one -> isInverted(one, body)).toList();
    inverted.stream()
        .filter(one -> kind(one) == Remark.Kind.IMPOSSIBLE)
        .forEach(one -> remarks.add(remark(one, body)));
    addComparisons(body, inverted, remarks);
    inverted.stream()
        .filter(one -> kind(one) == Remark.Kind.UNLIKELY)
        .forEach(one -> remarks.add(remark(one, body)));
    remarks.sort(Comparator.comparing(Remark::kind)); // stable: keeps the order within a kind
    return List.copyOf(remarks);
  }

  private boolean isInverted(Measures.Order order, BodyMeasurements body) {
    Optional<Measured> larger = ranges.get(order.larger()).possible(body);
    Optional<Measured> smaller = ranges.get(order.smaller()).possible(body);
    return larger.isPresent()
        && smaller.isPresent()
        && smaller.get().value().mm() >= larger.get().value().mm();
  }

  private static Remark.Kind kind(Measures.Order order) {
    return Remark.Kind.valueOf(order.kind().toUpperCase(Locale.ROOT));
  }

  private static Remark remark(Measures.Order order, BodyMeasurements body) {
    Measured larger = body.named(order.larger());
    Measured smaller = body.named(order.smaller());
    boolean onePlace =
        order.samePlace() != null
            && -larger.differenceMm(smaller) <= Length.parse(order.samePlace()).mm();
    Blanks blanks = Blanks.of("larger", larger.text()).and("smaller", smaller.text());
    return new Remark(
        order.field(),
        kind(order),
        blanks.fill(order.problem()),
        blanks.fill(onePlace ? order.samePlaceRemedy() : order.remedy()));
  }

  /** At most one comparison per pair makes a remark; none for an impossible pair. */
  private void addComparisons(
      BodyMeasurements body, List<Measures.Order> inverted, List<Remark> remarks) {
    List<MeasuredPair> spoke = new ArrayList<>();
    for (MeasuredPair pair : pairs) {
      boolean said =
          spoke.stream().anyMatch(pair::samePairAs)
              || inverted.stream()
                  .filter(one -> kind(one) == Remark.Kind.IMPOSSIBLE)
                  .anyMatch(one -> pair.isOf(one.larger(), one.smaller()));
      Optional<Remark> remark = said ? Optional.empty() : pair.remark(body);
      remark.ifPresent(
          one -> {
            remarks.add(one);
            spoke.add(pair);
          });
    }
  }
}
