package easewright.clinic;

import java.time.Instant;

/**
 * A group being helped together: a class, a make-along, a help board.
 *
 * @param retentionDays days after which an unchanged case is deleted
 * @param version increases by one with each change
 * @param sample whether its wearers are invented, so that deleting it loses nothing
 */
public record Clinic(
    String id, String name, int retentionDays, int version, Instant openedAt, boolean sample) {
  /** The longest retention, ten years, days. */
  public static final int MOST_DAYS = 3650;

  public Clinic {
    TextLimits.name(name);
    if (retentionDays < 1 || retentionDays > MOST_DAYS) {
      throw new IllegalArgumentException(
          "A case is kept from 1 to " + MOST_DAYS + " days, not " + retentionDays + ".");
    }
  }
}
