package easewright.clinic;

import java.time.Instant;

/**
 * One wearer's garment on its way to fitting, as it stands.
 *
 * @param nickname all that is known of who the wearer is
 * @param closed whether it is done with; a new round opens it again
 * @param version rises by one with each change
 * @param holder who is answering it; null when nobody is
 * @param rounds how many rounds it has
 * @param changedAt when anything was last added or changed; retention counts from here
 * @param waitingSince since when the wearer waits for a reply; null when not
 * @param stuck whether the last two tries with a known outcome brought no progress
 * @param last of the newest round; null without rounds
 */
public record Case(
    String id,
    String nickname,
    boolean closed,
    int version,
    Holder holder,
    int rounds,
    Instant openedAt,
    Instant changedAt,
    Instant waitingSince,
    boolean stuck,
    Gist last) {

  /** As many rounds without progress make a case stuck. */
  static final int STUCK = 2;

  public Case {
    TextLimits.name(nickname);
  }

  /** Who is answering a case: the id of their key, and their name. */
  public record Holder(String key, String name) {}

  /**
   * A round in a line.
   *
   * @param redFlag whether a caution of its advice stands against tightening, or says stop
   * @param cause id of the likeliest cause; null when none was likely enough to change something
   * @param sign id of the sign that speaks for it most; null without one
   * @param sheet id of the pattern sheet, or null
   * @param sizeCut the size cut, or null
   */
  public record Gist(boolean redFlag, String cause, String sign, String sheet, String sizeCut) {}
}
