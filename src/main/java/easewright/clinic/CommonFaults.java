package easewright.clinic;

import easewright.pattern.PatternSheet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Finds causes that cluster in neighbouring sizes. Each range is compared with the other sizes of
 * its pattern, a whole pattern with the others, by Fisher's exact test. Since very many ranges and
 * causes are tested, the smallest of all those probabilities is compared with the smallest under
 * shuffled causes: the min-p correction of Westfall and Young, Resampling-Based Multiple Testing,
 * 1993, as Kulldorff 1997 (Communications in Statistics: Theory and Methods 26:1481) does for
 * clusters in space.
 */
final class CommonFaults {
  /** Significance level; nothing is reported above it. */
  static final double LIMIT = 0.05;

  private static final int SHUFFLES = 1999;

  /** Fixed, so that the same cases always give the same answer. */
  private static final long SEED = 27;

  /** A size of a pattern, which contains cases. */
  private record Cell(PatternSheet sheet, String size) {}

  private final List<Cell> cells = new ArrayList<>();
  private final List<String> causes = new ArrayList<>();
  private final List<RangeTest> withinPatterns = new ArrayList<>();
  private final List<RangeTest> wholePatterns = new ArrayList<>();

  /** The cell of each case, in order of patterns, and the number of its cause, or −1. */
  private final int[] cellOf;

  private final int[] causeOf;

  private record Cut(Cell cell, String cause) {}

  private CommonFaults(List<CountedRound> sightings, List<PatternSheet> sheets) {
    List<Cut> cuts = new ArrayList<>();
    for (PatternSheet sheet : sheets) {
      sightings.stream()
          .filter(one -> sheet.id().equals(one.sheet()) && one.sizeCut() != null)
          .filter(one -> sheet.size(one.sizeCut()).isPresent())
          .forEach(one -> cuts.add(new Cut(new Cell(sheet, one.sizeCut()), one.cause())));
    }
    cuts.stream().map(Cut::cell).distinct().forEach(cells::add);
    cuts.stream().map(Cut::cause).filter(c -> c != null).distinct().forEach(causes::add);
    cellOf = cuts.stream().mapToInt(cut -> cells.indexOf(cut.cell())).toArray();
    causeOf = cuts.stream().mapToInt(cut -> causes.indexOf(cut.cause())).toArray();
    sheets.forEach(this::addTests);
  }

  private void addTests(PatternSheet sheet) {
    int[] cases = new int[cells.size()];
    Arrays.stream(cellOf).forEach(cell -> cases[cell]++);
    for (SizeRange range : SizeRange.in(sheet)) {
      int[] inside = which(cell -> cell.sheet() == sheet && lies(cell, range));
      int[] elsewhere =
          range.whole()
              ? which(cell -> cell.sheet() != sheet)
              : which(cell -> cell.sheet() == sheet && !lies(cell, range));
      RangeTest test = new RangeTest(sheet, range, inside, elsewhere, cases);
      if (test.hasCases()) {
        (range.whole() ? wholePatterns : withinPatterns).add(test);
      }
    }
  }

  private int[] which(Predicate<Cell> asked) {
    return IntStream.range(0, cells.size()).filter(i -> asked.test(cells.get(i))).toArray();
  }

  private static boolean lies(Cell cell, SizeRange range) {
    return range.of().label(cell.sheet(), cell.size()).filter(range.labels()::contains).isPresent();
  }

  /** The faults found, the most striking first; one for each pattern and cause. */
  static List<CommonFault> in(List<CountedRound> sightings, List<PatternSheet> sheets) {
    return new CommonFaults(sightings, sheets).found();
  }

  private record Candidate(RangeTest test, int cause, double p) {}

  private List<CommonFault> found() {
    int[][] hits = hits(causeOf);
    Map<List<Object>, Candidate> best = new HashMap<>();
    for (List<RangeTest> tests : List.of(withinPatterns, wholePatterns)) {
      for (RangeTest test : tests) {
        for (int cause = 0; cause < causes.size(); cause++) {
          Candidate one = new Candidate(test, cause, test.chance(hits[cause]));
          best.merge(List.of(test.sheet().id(), cause), one, CommonFaults::better);
        }
      }
    }
    double[] byChance = best.isEmpty() ? new double[0] : shuffledMinima();
    return best.values().stream()
        .sorted(
            Comparator.comparingDouble(Candidate::p)
                .thenComparing(one -> one.test().sheet().id())
                .thenComparing(one -> causes.get(one.cause())))
        .map(one -> fault(one, hits[one.cause()], chance(byChance, one.p())))
        .filter(fault -> fault.chance() <= LIMIT)
        .toList();
  }

  /** Of equally striking ranges, the narrower one. */
  private static Candidate better(Candidate one, Candidate other) {
    int labels = one.test().range().labels().size();
    boolean narrower = labels <= other.test().range().labels().size();
    return one.p() < other.p() || one.p() == other.p() && narrower ? one : other;
  }

  private CommonFault fault(Candidate one, int[] hits, double chance) {
    SizeRange range = one.test().range();
    PatternSheet sheet = one.test().sheet();
    int[] cases = new int[cells.size()];
    Arrays.stream(cellOf).forEach(cell -> cases[cell]++);
    List<CommonFault.AtSize> bySize = new ArrayList<>();
    for (String label : range.all()) {
      SizeRange single = new SizeRange(range.of(), List.of(label), range.all());
      int[] at = which(cell -> cell.sheet() == sheet && lies(cell, single));
      Share share = new RangeTest(sheet, single, at, new int[0], cases).inside(hits);
      bySize.add(new CommonFault.AtSize(label, share, range.labels().contains(label)));
    }
    return new CommonFault(
        sheet,
        causes.get(one.cause()),
        range,
        one.test().inside(hits),
        one.test().elsewhere(hits),
        chance,
        bySize);
  }

  /** Number of cases of each cell with each cause. */
  private int[][] hits(int[] causeOf) {
    int[][] hits = new int[causes.size()][cells.size()];
    for (int i = 0; i < causeOf.length; i++) {
      if (causeOf[i] >= 0) {
        hits[causeOf[i]][cellOf[i]]++;
      }
    }
    return hits;
  }

  /**
   * The smallest probability under each shuffling. Within patterns, causes are shuffled among the
   * cases of the pattern, since patterns may differ; to compare patterns, among all cases.
   */
  private double[] shuffledMinima() {
    Random random = new Random(SEED);
    double[] minima = new double[SHUFFLES];
    for (int i = 0; i < SHUFFLES; i++) {
      int[] within = causeOf.clone();
      for (int from = 0; from < within.length; ) {
        int to = from;
        while (to < within.length && sheetOf(to) == sheetOf(from)) {
          to++;
        }
        shuffle(within, from, to, random);
        from = to;
      }
      int[] among = causeOf.clone();
      shuffle(among, 0, among.length, random);
      minima[i] = Math.min(least(withinPatterns, hits(within)), least(wholePatterns, hits(among)));
    }
    return minima;
  }

  private PatternSheet sheetOf(int one) {
    return cells.get(cellOf[one]).sheet();
  }

  private static void shuffle(int[] values, int from, int to, Random random) {
    for (int last = to - 1; last > from; last--) {
      int other = from + random.nextInt(last - from + 1);
      int value = values[last];
      values[last] = values[other];
      values[other] = value;
    }
  }

  private static double least(List<RangeTest> tests, int[][] hits) {
    double least = 1;
    for (RangeTest test : tests) {
      for (int[] ofCause : hits) {
        least = Math.min(least, test.chance(ofCause));
      }
    }
    return least;
  }

  /** The unshuffled cases count as one of the shufflings, so that no probability is zero. */
  private static double chance(double[] byChance, double p) {
    double hair = 1 + 1e-9; // equal tables may differ in their last digit
    return (1.0 + Arrays.stream(byChance).filter(one -> one <= p * hair).count())
        / (1 + byChance.length);
  }
}
