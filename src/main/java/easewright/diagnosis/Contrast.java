package easewright.diagnosis;

import easewright.diagnosis.Answer.ChangeNote;
import easewright.diagnosis.Answer.WhyNotNote;
import easewright.inference.Observation;
import easewright.inference.Posterior;
import easewright.inference.WhyNot;
import easewright.inference.WhyNot.Turn;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Finds what would put another cause first. */
final class Contrast {
  private static final int MOST_TURNS = 3;

  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Map<String, Report> reports;
  private final Asking asking;
  private final Tightening tightening;

  /**
   * @param reports by sign
   * @param tightening what must not be spoken of; null where everything may be
   */
  Contrast(
      Knowledge knowledge,
      Posterior posterior,
      Map<String, Report> reports,
      Asking asking,
      Tightening tightening) {
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.reports = reports;
    this.asking = asking;
    this.tightening = tightening;
  }

  /** Answers "why not this cause?"; nothing to say of the one that is first. */
  List<WhyNotNote> notes(List<String> causes) {
    return causes.stream()
        .filter(cause -> !cause.equals(posterior.first()))
        .filter(cause -> tightening == null || !tightening.cures(cause))
        .map(this::note)
        .toList();
  }

  private WhyNotNote note(String cause) {
    WhyNot why =
        WhyNot.explain(
            posterior,
            cause,
            asking.signs(List.of(cause, posterior.first())),
            this::answered,
            MOST_TURNS);
    return new WhyNotNote(
        cause,
        knowledge.catalog().nameOf(cause),
        Explaining.rounded(posterior.probability(cause)),
        knowledge.catalog().nameOf(why.first()),
        Explaining.rounded(10 * Math.log10(why.oddsGap())),
        Stream.concat(why.answers().stream(), why.reports().stream())
            .map(this::turn)
            .filter(changes -> tightening == null || !tightening.isAmong(changes))
            .toList());
  }

  private String name(String sign) {
    Report report = reports.get(sign);
    return report == null ? knowledge.catalog().nameOf(sign) : report.name();
  }

  /** A sign counts as any answer does; a finding or an outcome turned round keeps its trust. */
  private Observation answered(String sign, boolean present) {
    boolean answerable = knowledge.catalog().signs().containsKey(sign);
    double asReported =
        answerable
            ? knowledge.trustInReply(sign, present)
            : reports.get(sign).observation().trust();
    return new Observation(sign, present, asReported);
  }

  private List<ChangeNote> turn(Turn turn) {
    return turn.changes().stream()
        .map(
            change ->
                new ChangeNote(
                    Report.wireId(change.sign()),
                    name(change.sign()),
                    switch (change.kind()) {
                      case PRESENT, ABSENT -> "add";
                      case REMOVED -> "withdraw";
                      case REVERSED -> "reverse";
                    },
                    change.kind() == WhyNot.Kind.PRESENT))
        .toList();
  }
}
