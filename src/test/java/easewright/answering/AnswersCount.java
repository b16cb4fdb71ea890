package easewright.answering;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CauseNote;
import easewright.request.FaultyRequest;
import java.util.ArrayList;
import java.util.List;

/** How far the answers to posts, read in one way, are what their writers would answer. */
final class AnswersCount {
  private static final double RIGHT_MM = 3;
  private static final double RIGHT_SHARE = 0.1;

  static final String HEAD =
      "| read by | first cause | first three | first advice | amounts | clear, and wrong | forbidden"
          + " | fit refused | dangers stopped | stopped without one | nothing wrong | asked first |"
          + " unrelated answered |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|\n";

  /** Fit questions. */
  int fit;

  int first;
  int three;
  int advised;
  int clear;
  int clearWrong;
  int refused;
  int amounts;
  int amountsRight;

  /** First advice that a teacher would forbid, on any post. */
  int forbidden;

  int dangers;
  int dangersStopped;
  int stoppedWithoutOne;
  int nothing;
  int nothingSaid;
  int unclear;
  int askedFirst;
  int other;
  int otherAnswered;

  /** Of posts in view: what came in place of what was expected. */
  final List<String> misses = new ArrayList<>();

  /** Adds the answer to a post. */
  void addText(ExpectedAnswer post, Edition edition) {
    ObjectNode request = JsonNodeFactory.instance.objectNode().put("text", post.text());
    add(post, answer(request, edition));
  }

  /** Adds the answer to what is labelled in a post. */
  void addLabels(ExpectedAnswer post, Edition edition) {
    add(post, post.kind().equals("other") ? null : answer(post.labels(), edition));
  }

  private static Answer answer(ObjectNode request, Edition edition) {
    try {
      return edition.answer(request);
    } catch (FaultyRequest refused) {
      return null;
    }
  }

  /**
   * @param answer null where the request was refused
   */
  private void add(ExpectedAnswer post, Answer answer) {
    boolean stopped = answer != null && answer.isDanger();
    String advice = advice(answer);
    if (!post.kind().equals("danger")) {
      stoppedWithoutOne += stopped ? 1 : 0;
      forbidden += post.forbid().contains(advice) ? 1 : 0;
    }
    boolean right =
        switch (post.kind()) {
          case "danger" -> {
            dangers++;
            dangersStopped += stopped ? 1 : 0;
            yield stopped;
          }
          case "care" -> {
            dangers++;
            boolean cared = stopped || answer != null && !answer.cautions().isEmpty();
            dangersStopped += cared ? 1 : 0;
            yield cared;
          }
          case "other" -> {
            other++;
            otherAnswered += answer == null ? 0 : 1;
            yield answer == null;
          }
          case "nothing" -> {
            nothing++;
            boolean said = answer != null && !stopped && advice.isEmpty() && !answer.clear();
            nothingSaid += said ? 1 : 0;
            yield said;
          }
          case "ask" -> {
            unclear++;
            boolean asked = answer == null || !stopped && !answer.clear();
            askedFirst += asked ? 1 : 0;
            yield asked;
          }
          default -> addFit(post, answer, advice);
        };
    if (!right || post.forbid().contains(advice)) {
      misses.add(
          "%s (%s %s): %s%n"
              .formatted(post.id(), post.kind(), post.causes(), came(answer, advice)));
    }
  }

  private boolean addFit(ExpectedAnswer post, Answer answer, String advice) {
    fit++;
    amounts += post.amountOf().isEmpty() ? 0 : 1;
    if (answer == null) {
      refused++;
      return false;
    }
    List<String> causes = answer.causes().stream().map(CauseNote::id).limit(3).toList();
    boolean isFirst = !causes.isEmpty() && post.causes().contains(causes.get(0));
    first += isFirst ? 1 : 0;
    three += causes.stream().anyMatch(post.causes()::contains) ? 1 : 0;
    advised += post.advises().contains(advice) ? 1 : 0;
    clear += answer.clear() ? 1 : 0;
    clearWrong += answer.clear() && !isFirst ? 1 : 0;
    amountsRight += saysAmount(post, answer) ? 1 : 0;
    if (!post.amountOf().isEmpty() && !saysAmount(post, answer)) {
      misses.add(
          "%s amount %s %s mm: %s%n"
              .formatted(post.id(), post.amountOf(), post.amountMm(), amounts(answer)));
    }
    return isFirst;
  }

  /** Writers name an amount of one side, or of both together; either is taken. */
  static boolean saysAmount(ExpectedAnswer post, Answer answer) {
    double near = Math.max(post.withinMm(), Math.max(RIGHT_MM, RIGHT_SHARE * post.amountMm()));
    return answer.adjustments().stream()
        .filter(one -> one.id().equals(post.amountOf()) && one.amount() != null)
        .mapToDouble(one -> one.amount().mm())
        .anyMatch(
            mm ->
                Math.abs(mm - post.amountMm()) <= near
                    || Math.abs(mm - 2 * post.amountMm()) <= near);
  }

  private static List<String> amounts(Answer answer) {
    return answer.adjustments().stream()
        .map(one -> one.id() + (one.amount() == null ? "" : " " + one.amount().mm()))
        .toList();
  }

  static String advice(Answer answer) {
    return answer == null
        ? ""
        : answer.adjustments().stream().findFirst().map(AdjustmentNote::id).orElse("");
  }

  private static String came(Answer answer, String advice) {
    if (answer == null) {
      return "refused";
    }
    return answer.isDanger()
        ? "danger " + answer.cautions().get(0).id()
        : answer.causes().stream().limit(3).map(c -> c.id() + " " + c.probability()).toList()
            + (answer.clear() ? " clear" : "")
            + "; "
            + advice
            + "; read "
            + answer.understood().signs().stream()
                .map(sign -> (sign.present() ? "+" : "-") + sign.id())
                .toList();
  }

  /** A row of a Markdown table. */
  String row(String name) {
    return "| %s | %d of %d | %d | %d | %d of %d | %d, %d | %d | %d | %d of %d | %d | %d of %d | %d of %d | %d of %d |%n"
        .formatted(
            name,
            first,
            fit,
            three,
            advised,
            amountsRight,
            amounts,
            clear,
            clearWrong,
            forbidden,
            refused,
            dangersStopped,
            dangers,
            stoppedWithoutOne,
            nothingSaid,
            nothing,
            askedFirst,
            unclear,
            otherAnswered,
            other);
  }
}
