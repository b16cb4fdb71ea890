package easewright.clinic;

import easewright.pattern.PatternSheet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Recurring causes and signs in a clinic, by pattern, size, cloth and choice. Each case counts once
 * for its cause, and once for each of its signs. It is about patterns and cloth, never about a
 * wearer.
 *
 * @param asked the filter used
 * @param known the values available for filtering, whatever the filter
 * @param cases number of cases counted
 * @param unclear number of them without a cause likely enough to name
 * @param redFlags cases of the clinic with a round that has a red flag; those rounds are counted
 *     here only
 * @param complete whether every case of the clinic was read
 * @param causes number of cases with each cause, most frequent first
 * @param signs the same for signs
 * @param groups the same for the cases of each pattern, size, cloth and choice
 * @param faults likely faults of patterns
 */
public record Insight(
    Asked asked,
    List<Known> known,
    int cases,
    int unclear,
    int redFlags,
    boolean complete,
    List<Count> causes,
    List<Count> signs,
    List<Group> groups,
    List<CommonFault> faults) {

  public Insight {
    known = List.copyOf(known);
    causes = List.copyOf(causes);
    signs = List.copyOf(signs);
    groups = List.copyOf(groups);
    faults = List.copyOf(faults);
  }

  /** What cases are grouped by. */
  public enum By {
    PATTERN,
    SIZE,
    CLOTH,
    CHOICE
  }

  /**
   * Which cases to count; null means any.
   *
   * @param pattern id of a pattern sheet
   * @param size a size cut
   * @param cloth a stretch class
   * @param choice choice and option with "=" between them
   */
  public record Asked(String pattern, String size, String cloth, String choice) {
    public static final Asked ANY = new Asked(null, null, null, null);

    private boolean admits(CountedRound one) {
      return Stream.of(By.values())
          .allMatch(by -> value(by) == null || values(one, by).contains(value(by)));
    }

    private String value(By by) {
      return switch (by) {
        case PATTERN -> pattern;
        case SIZE -> size;
        case CLOTH -> cloth;
        case CHOICE -> choice;
      };
    }
  }

  /**
   * A pattern, size, cloth or choice that cases of the clinic have.
   *
   * @param value as in {@link Group}
   * @param cases number of cases among all
   */
  public record Known(By by, String value, int cases) {}

  /** A cause or a sign by its id, and the share of cases with it. */
  public record Count(String id, Share share) {}

  /**
   * Cases with something in common.
   *
   * @param value id of the pattern, the size, the stretch class, or choice and option
   * @param cases number of cases
   */
  public record Group(By by, String value, int cases, List<Count> causes, List<Count> signs) {}

  static Insight of(CountedRounds.Read read, Asked asked, List<PatternSheet> sheets) {
    List<CountedRound> all = read.cases().stream().filter(CountedRound::seenOtherwise).toList();
    List<CountedRound> cases = all.stream().filter(asked::admits).toList();
    return new Insight(
        asked,
        groups(all).stream()
            .map(group -> new Known(group.by(), group.value(), group.cases()))
            .toList(),
        cases.size(),
        (int) cases.stream().filter(one -> one.cause() == null).count(),
        (int) read.cases().stream().filter(CountedRound::redFlag).count(),
        read.complete(),
        causes(cases),
        signs(cases),
        groups(cases),
        CommonFaults.in(all, sheets).stream()
            .filter(fault -> asked.pattern() == null || fault.sheet().id().equals(asked.pattern()))
            .toList());
  }

  private static List<Count> causes(List<CountedRound> cases) {
    return counts(cases, one -> one.cause() == null ? List.of() : List.of(one.cause()));
  }

  private static List<Count> signs(List<CountedRound> cases) {
    return counts(cases, CountedRound::signs);
  }

  private static List<Count> counts(
      List<CountedRound> cases, Function<CountedRound, List<String>> ids) {
    Map<String, Long> counts =
        cases.stream()
            .flatMap(one -> ids.apply(one).stream())
            .collect(Collectors.groupingBy(id -> id, TreeMap::new, Collectors.counting()));
    return counts.entrySet().stream()
        .map(
            count ->
                new Count(count.getKey(), new Share(count.getValue().intValue(), cases.size())))
        .sorted(Comparator.comparing((Count count) -> -count.share().part()))
        .toList();
  }

  private static List<Group> groups(List<CountedRound> cases) {
    List<Group> groups = new ArrayList<>();
    for (By by : By.values()) {
      Map<String, List<CountedRound>> byValue = new TreeMap<>();
      for (CountedRound one : cases) {
        for (String value : values(one, by)) {
          byValue.computeIfAbsent(value, key -> new ArrayList<>()).add(one);
        }
      }
      byValue.forEach(
          (value, of) -> groups.add(new Group(by, value, of.size(), causes(of), signs(of))));
    }
    return groups;
  }

  private static List<String> values(CountedRound one, By by) {
    if (by == By.CHOICE) {
      return one.choices().entrySet().stream()
          .map(choice -> choice.getKey() + "=" + choice.getValue())
          .toList();
    }
    String value = by == By.PATTERN ? one.sheet() : by == By.SIZE ? one.sizeCut() : one.cloth();
    return value == null ? List.of() : List.of(value);
  }
}
