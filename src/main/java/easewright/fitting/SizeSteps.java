package easewright.fitting;

import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.Span;
import easewright.size.SizeSystem;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which way another size lies from the size cut, one step of band or cup away at most: by the
 * girths of the sheet's sizes, or without a sheet by the labels. Farther sizes say nothing of the
 * next.
 */
public final class SizeSteps {
  private static final Pattern LABEL = Pattern.compile("(\\d{2,3}) ?([A-Z]{1,3})");

  private final PatternSheet sheet;
  private final String cut;
  private final double leastCupStepMm;

  /**
   * @param leastCupStepMm a smaller difference between two cups is none
   */
  public SizeSteps(Fitting fitting, double leastCupStepMm) {
    this.sheet = fitting.sheet();
    this.cut = fitting.sizeCut();
    this.leastCupStepMm = leastCupStepMm;
  }

  /** A change of size, with its name in {@code practice/sizing.yaml}. */
  public enum Step {
    UP("up"),
    DOWN("down"),
    SISTER("sister"),
    LARGER_SISTER("larger-sister"),
    LARGER_CUP("larger-cup"),
    SMALLER_CUP("smaller-cup");

    private final String id;

    Step(String id) {
      this.id = id;
    }

    /** The name in the rule book. */
    public String id() {
      return id;
    }

    /** Empty where nothing changes, or the band by several steps. */
    private static Optional<Step> of(int band, int cup) {
      if (band == 0 && cup != 0) {
        return Optional.of(cup > 0 ? LARGER_CUP : SMALLER_CUP);
      }
      if (Math.abs(band) != 1) {
        return Optional.empty();
      }
      if (band > 0) {
        return Optional.of(cup < 0 ? LARGER_SISTER : UP);
      }
      return Optional.of(cup > 0 ? SISTER : DOWN);
    }
  }

  /** The step from the size cut to another; empty where nothing shows which it is. */
  public Optional<Step> to(String other) {
    if (cut == null) {
      return Optional.empty();
    }
    return sheet == null ? byLabel(other) : byGirths(other);
  }

  private Optional<Step> byGirths(String other) {
    Optional<PatternSize> from = sheet.size(cut);
    Optional<PatternSize> to = sheet.size(other);
    if (from.isEmpty() || to.isEmpty()) {
      return Optional.empty();
    }
    List<Double> bands = sheet.sizes().stream().map(SizeSteps::band).distinct().sorted().toList();
    int band = bands.indexOf(band(to.get())) - bands.indexOf(band(from.get()));
    double cup = to.get().differenceMm().orElse(0.0) - from.get().differenceMm().orElse(0.0);
    int steps = Math.abs(cup) < leastCupStepMm ? 0 : (int) Math.signum(cup);
    return band == 0 && !isNextCup(from.get(), to.get()) ? Optional.empty() : Step.of(band, steps);
  }

  /** Whether no other cup of the same band lies between two. */
  private boolean isNextCup(PatternSize one, PatternSize other) {
    List<Double> cups =
        sheet.sizes().stream()
            .filter(size -> band(size) == band(one))
            .flatMap(size -> size.differenceMm().stream())
            .distinct()
            .sorted()
            .toList();
    int step =
        cups.indexOf(one.differenceMm().orElse(0.0))
            - cups.indexOf(other.differenceMm().orElse(0.0));
    return Math.abs(step) == 1;
  }

  /** The middle of what tells its bands apart: the underbust, or the bust where it goes alone. */
  private static double band(PatternSize size) {
    return size.underbustMm()
        .or(() -> size.bodies().get(0).bustMm())
        .map(Span::middleMm)
        .orElseThrow();
  }

  /** By the first system that prints both labels. */
  private Optional<Step> byLabel(String other) {
    Matcher from = LABEL.matcher(cut.strip());
    Matcher to = LABEL.matcher(other.strip());
    if (!from.matches() || !to.matches()) {
      return Optional.empty();
    }
    int first = Integer.parseInt(from.group(1));
    int bands = Integer.parseInt(to.group(1)) - first;
    return Arrays.stream(SizeSystem.values())
        .filter(system -> system.hasBand(first))
        .filter(system -> bands == 0 || Math.abs(bands) == system.bandStep())
        .filter(system -> system.cups().containsAll(List.of(from.group(2), to.group(2))))
        .findFirst()
        .flatMap(
            system -> {
              int cups = system.cups().indexOf(to.group(2)) - system.cups().indexOf(from.group(2));
              return bands == 0 && Math.abs(cups) != 1
                  ? Optional.<Step>empty()
                  : Step.of(Integer.signum(bands), cups);
            });
  }
}
