package easewright.book;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.BiPredicate;

/** How far the answers to whole fittings are what their writers expect. */
final class FittingsScore {
  /** An amount is right within this, or within a tenth. */
  private static final double RIGHT_MM = 3;

  private static final double RIGHT_SHARE = 0.1;

  private final Map<WholeFitting, Answer> answers;

  FittingsScore(Map<WholeFitting, Answer> answers) {
    this.answers = answers;
  }

  /** How many fittings there are. */
  long count() {
    return answers.size();
  }

  /** How many name the right cause first, or rightly say "nothing" or "unclear". */
  long first() {
    return count(FittingsScore::isFirst);
  }

  /** How many have the right cause among the first three. */
  long three() {
    return count(FittingsScore::isAmongThree);
  }

  /** How many advise first what their writer would. */
  long advised() {
    return count(FittingsScore::isAdvised);
  }

  /** How many have an amount that the numbers decide. */
  long withAmount() {
    return count((fitting, answer) -> !fitting.amountOf().isEmpty());
  }

  /** How many of those say it. */
  long amounts() {
    return count((fitting, answer) -> !fitting.amountOf().isEmpty() && saysAmount(fitting, answer));
  }

  /** How many advise first what a careful teacher would forbid. */
  long forbidden() {
    return count(FittingsScore::isForbidden);
  }

  private long count(BiPredicate<WholeFitting, Answer> holds) {
    return answers.entrySet().stream().filter(e -> holds.test(e.getKey(), e.getValue())).count();
  }

  private static boolean isFirst(WholeFitting fitting, Answer answer) {
    return switch (fitting.first()) {
      case "nothing" -> saysNothing(answer);
      case "unclear" -> !answer.clear() && !answer.questions().isEmpty();
      default -> isCause(fitting, Consulting.causes(answer).stream().limit(1).toList());
    };
  }

  private static boolean isAmongThree(WholeFitting fitting, Answer answer) {
    return fitting.first().equals("nothing") || fitting.first().equals("unclear")
        ? isFirst(fitting, answer)
        : isCause(fitting, Consulting.causes(answer).stream().limit(3).toList());
  }

  private static boolean isCause(WholeFitting fitting, List<String> named) {
    return named.stream()
        .anyMatch(
            cause ->
                cause.equals(fitting.first())
                    || cause.equals(fitting.second())
                    || fitting.or().contains(cause));
  }

  private static boolean saysNothing(Answer answer) {
    return answer.adjustments().isEmpty()
        && !answer.clear()
        && (answer.causes().isEmpty()
            || answer.nothingWrong() > answer.causes().get(0).probability());
  }

  private static boolean isAdvised(WholeFitting fitting, Answer answer) {
    String first = firstAdvice(answer);
    return fitting.advises().isEmpty() ? first.isEmpty() : fitting.advises().contains(first);
  }

  private static boolean isForbidden(WholeFitting fitting, Answer answer) {
    return fitting.never().contains(firstAdvice(answer));
  }

  private static String firstAdvice(Answer answer) {
    return answer.adjustments().stream().findFirst().map(AdjustmentNote::id).orElse("");
  }

  private static boolean saysAmount(WholeFitting fitting, Answer answer) {
    double near = Math.max(RIGHT_MM, RIGHT_SHARE * fitting.amountMm());
    return answer.adjustments().stream()
        .filter(one -> one.id().equals(fitting.amountOf()) && one.amount() != null)
        .anyMatch(one -> Math.abs(one.amount().mm() - fitting.amountMm()) <= near);
  }

  /**
   * @param inView whether cases may be shown, since the book may be mended by them
   */
  String report(boolean inView) {
    StringBuilder text = new StringBuilder("| group | fittings | first | in three | advice |\n");
    text.append("|---|---|---|---|---|\n");
    Map<String, Map<WholeFitting, Answer>> groups = new LinkedHashMap<>();
    answers.forEach(
        (f, a) -> groups.computeIfAbsent(f.group(), g -> new LinkedHashMap<>()).put(f, a));
    groups.put("all", answers);
    groups.forEach(
        (group, some) -> {
          FittingsScore score = new FittingsScore(some);
          text.append(
              "| %s | %d | %d | %d | %d |%n"
                  .formatted(group, some.size(), score.first(), score.three(), score.advised()));
        });
    text.append(
        "%nAmounts that the numbers decide: %d of %d. First advice a teacher would forbid: %d.%n"
            .formatted(amounts(), withAmount(), forbidden()));
    if (inView) {
      answers.forEach((fitting, answer) -> text.append(misses(fitting, answer)));
    }
    return text.toString();
  }

  private static String misses(WholeFitting fitting, Answer answer) {
    TreeSet<String> misses = new TreeSet<>();
    if (!isFirst(fitting, answer)) {
      misses.add("first " + fitting.first());
    }
    if (!isAdvised(fitting, answer)) {
      misses.add("advice " + fitting.advises());
    }
    if (isForbidden(fitting, answer)) {
      misses.add("FORBIDDEN");
    }
    if (!fitting.amountOf().isEmpty() && !saysAmount(fitting, answer)) {
      misses.add("amount " + fitting.amountOf() + " " + fitting.amountMm() + " mm");
    }
    return misses.isEmpty()
        ? ""
        : "%n%s (%s): %s%n  came: %s; %s%n"
            .formatted(
                fitting.id(),
                fitting.group(),
                misses,
                Consulting.leading(answer),
                answer.adjustments().stream()
                    .limit(4)
                    .map(a -> a.id() + (a.amount() == null ? "" : " " + a.amount().text()))
                    .toList());
  }
}
