package easewright.clinic;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;

/**
 * One toile's fitting within a case.
 *
 * @param number from 1
 * @param by who added it
 * @param fitted the fitting, and the advice as given then
 * @param reply the reply as posted; null until there is one
 * @param outcome of its advice; null until reported
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

  /** An author, by name and role. */
  public record Author(String name, Role role) {}

  /** A reply as posted. */
  public record Reply(String text, String by, Instant at) {}

  /** The fitting as requested. */
  public JsonNode request() {
    return fitted.request();
  }
}
