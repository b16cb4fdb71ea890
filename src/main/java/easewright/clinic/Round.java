package easewright.clinic;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;

/**
 * One toile's fitting within a case.
 *
 * @param number from 1
 * @param by who added it
 * @param fitted the fitting, and the advice as it was given then
 * @param reply the reply as posted; null until there is one
 * @param outcome what became of it; null until told
 * @param outcomeSaid the same in the wearer's words, or null
 */
public record Round(
    int number,
    Instant addedAt,
    Author by,
    Fitted fitted,
    Reply reply,
    Outcome outcome,
    String outcomeSaid) {

  /** Whoever wrote something, by name and role. */
  public record Author(String name, Role role) {}

  /** A reply as it was posted. */
  public record Reply(String text, String by, Instant at) {}

  /** The fitting as asked. */
  public JsonNode request() {
    return fitted.request();
  }
}
