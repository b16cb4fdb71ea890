package easewright.clinic;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer;

/**
 * A fitting and its answer, before they become a round of a case.
 *
 * @param post the wearer's own words, or null
 * @param request the fitting, as the request to continue from
 * @param advice the answer as given, without the request
 * @param gist its summary in a list
 */
public record Fitted(String post, JsonNode request, JsonNode advice, Case.Gist gist) {
  public Fitted {
    if (post != null) {
      TextLimits.text(post);
    }
  }

  /**
   * From an answer.
   *
   * @param advice the same answer as JSON, without the request to continue from
   */
  public static Fitted of(String post, Answer answer, JsonNode advice) {
    boolean redFlag =
        answer.cautions().stream()
            .anyMatch(caution -> caution.stopsTightening() || "stop".equals(caution.urgency()));
    boolean clear = answer.clear() && !answer.causes().isEmpty();
    return new Fitted(
        post,
        answer.soFar(),
        advice,
        new Case.Gist(
            redFlag,
            clear ? answer.causes().get(0).id() : null,
            clear ? leadingSign(answer.causes().get(0)) : null,
            answer.understood().sheet(),
            answer.understood().sizeCut()));
  }

  private static String leadingSign(Answer.CauseNote cause) {
    return cause.evidenceFor().stream()
        .filter(report -> "sign".equals(report.kind()) && report.present())
        .map(Answer.EvidenceNote::id)
        .findFirst()
        .orElse(null);
  }
}
