package easewright.diagnosis;

import easewright.fitting.EarlierSize;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.fitting.SizeSteps;
import easewright.fitting.SizeSteps.Step;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.SizingNotes.Neighbours;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;

/**
 * What two toiles in neighbouring sizes tell together, as a sign: the smaller one is tight and the
 * larger one loose.
 */
final class ToilesCompared {
  private static final Set<Step> LARGER = Set.of(Step.UP, Step.LARGER_CUP);
  private static final Set<Step> SMALLER = Set.of(Step.DOWN, Step.SMALLER_CUP);

  private ToilesCompared() {}

  /** The fitting, with the sign that its toiles are together where nobody told of it. */
  static Fitting with(Fitting fitting, RuleBookSource source) {
    Neighbours neighbours = source.catalog().practice().sizing().neighbours();
    boolean told = fitting.signs().stream().anyMatch(sign -> sign.id().equals(neighbours.sign()));
    SizeSteps steps = new SizeSteps(fitting, source.parameter("least-cup-step"));
    if (told
        || fitting.earlierSizes().stream()
            .noneMatch(toile -> isOpposite(toile, steps, fitting, neighbours))) {
      return fitting;
    }
    List<ReportedSign> signs = new ArrayList<>(fitting.signs());
    signs.add(new ReportedSign(neighbours.sign(), true, null, null, "strong", null, List.of()));
    return fitting.withSigns(signs);
  }

  private static boolean isOpposite(
      EarlierSize toile, SizeSteps steps, Fitting fitting, Neighbours neighbours) {
    List<String> now =
        fitting.signs().stream().filter(ReportedSign::present).map(ReportedSign::id).toList();
    return steps
        .to(toile.size())
        .filter(
            step ->
                LARGER.contains(step)
                        && both(now, neighbours.tight(), toile.worse(), neighbours.loose())
                    || SMALLER.contains(step)
                        && both(now, neighbours.loose(), toile.worse(), neighbours.tight()))
        .isPresent();
  }

  private static boolean both(
      List<String> now, List<String> ofNow, List<String> then, List<String> ofThen) {
    return !Collections.disjoint(now, ofNow) && !Collections.disjoint(then, ofThen);
  }
}
