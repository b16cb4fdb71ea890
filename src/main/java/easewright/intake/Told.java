package easewright.intake;

import easewright.intake.Reading.TextRead;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.reading.OutcomesSaid;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a text tells beside signs, lengths of the body and changes made.
 *
 * @param trials changes held, pinned or basted for a look
 * @param sizes toiles sewn before in other sizes
 * @param edges finished edges of the toile, each once
 * @param design the design: each a field and a value, such as "back racer"
 * @param making how it was sewn: each a field and a value, such as "seams 4"
 * @param sizeSystem where the size cut is a label of; null when not said
 * @param measuredBy how the body was measured, as a request names it; null when not said
 * @param asksAbout adjustments the writer asks whether to make
 * @param questions what else the writer asks
 */
public record Told(
    List<TrialRead> trials,
    List<SizeRead> sizes,
    List<EdgeRead> edges,
    List<TextRead> design,
    List<TextRead> making,
    TextRead sizeSystem,
    TextRead measuredBy,
    List<TextRead> asksAbout,
    List<QuestionRead> questions) {

  private static final Set<String> WHAT_TO_DO = Set.of("do", "amount", "place");
  private static final Set<String> WHETHER_TO_ACT = Set.of("act");
  private static final Set<String> WHETHER_ANYTHING = Set.of("normal", "need", "must");

  /** Nothing is told. */
  static final Told NOTHING =
      new Told(
          List.of(), List.of(), List.of(), List.of(), List.of(), null, null, List.of(), List.of());

  /** Whether it tells what was tried or measured of a toile. */
  boolean tellsOfAToile() {
    return !trials.isEmpty() || !sizes.isEmpty() || !edges.isEmpty() || !making.isEmpty();
  }

  /**
   * Whether it is asked what to do, by how much or where, or whether to do it, and not also whether
   * all is normal, since that may be the answer.
   */
  public boolean asksWhatToDo() {
    return (asks(WHAT_TO_DO) || asks(WHETHER_TO_ACT)) && !asks(WHETHER_ANYTHING);
  }

  private boolean asks(Set<String> kinds) {
    return questions.stream().anyMatch(one -> kinds.contains(one.kind()));
  }

  /** The same with only these trials. */
  public Told withTrials(Predicate<TrialRead> some) {
    return of(trials.stream().filter(some).toList());
  }

  /** The same with more trials; of one change, the one that was read first counts. */
  Told with(List<TrialRead> more) {
    Set<String> known = trials.stream().map(TrialRead::adjustment).collect(Collectors.toSet());
    return of(
        Stream.concat(
                trials.stream(), more.stream().filter(one -> !known.contains(one.adjustment())))
            .toList());
  }

  private Told of(List<TrialRead> only) {
    return new Told(
        only, sizes, edges, design, making, sizeSystem, measuredBy, asksAbout, questions);
  }

  /** Where all of it stands. */
  List<TextSpan> spans() {
    return Stream.of(
            trials.stream().map(TrialRead::span),
            sizes.stream().map(SizeRead::span),
            edges.stream().map(EdgeRead::span),
            design.stream().map(TextRead::span),
            making.stream().map(TextRead::span),
            asksAbout.stream().map(TextRead::span),
            Stream.of(sizeSystem, measuredBy).filter(Objects::nonNull).map(TextRead::span))
        .flatMap(spans -> spans)
        .toList();
  }

  /**
   * A change tried for a look.
   *
   * @param amount by how much, or null
   * @param how "held", "pinned", "basted" or "worn"
   * @param outcome "right", "better", "same" or "worse", or null
   */
  public record TrialRead(
      String adjustment,
      AmountRead amount,
      String how,
      String outcome,
      TextSpan span,
      double confidence) {

    /** The same trial, with what the model makes of its outcome. */
    TrialRead thatDid(OutcomesSaid outcomes) {
      String did = outcomes.of(span.from(), span.to(), outcome);
      return new TrialRead(adjustment, amount, how, did, span, confidence);
    }
  }

  /**
   * A toile sewn before in another size.
   *
   * @param outcome how it fitted beside the present one: "better", "same" or "worse", or null
   * @param better signs that it showed less than the present one does
   * @param worse signs that it showed more
   */
  public record SizeRead(
      String size,
      String outcome,
      List<String> better,
      List<String> worse,
      TextSpan span,
      double confidence) {}

  /**
   * A finished edge. Quantities are text with their unit; each is null when not said.
   *
   * @param edge as a request names it, such as "neckline"
   * @param cut length that was cut of its elastic
   * @param width of its elastic
   */
  public record EdgeRead(
      String edge,
      String length,
      String cut,
      String width,
      String kind,
      String putOn,
      TextSpan span,
      double confidence) {}
}
