package easewright.clinic;

import java.time.Instant;

/**
 * The fitting of one wearer's garment, in its current state.
 *
 * @param nickname the only identification of the wearer
 * @param closed whether it is finished; a new round reopens it
 * @param version increases by one with each change
 * @param holder who is answering it; null if nobody is
 * @param rounds number of rounds
 * @param changedAt when anything was last added or changed; retention counts from here
 * @param waitingSince since when the wearer has waited for a reply; null if not waiting
 * @param stuck whether the last two tries with a known outcome brought no progress
 * @param last gist of the latest round; null without rounds
 * @param asked the first words of the latest round's post; null without one
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
    Gist last,
    String asked) {

  /** Characters of a post that are shown in a list. */
  static final int FIRST_WORDS = 240;

  /** Number of rounds without progress after which a case is stuck. */
  static final int STUCK = 2;

  public Case {
    TextLimits.name(nickname);
  }

  /** Who is answering a case: the id of their key, and their name. */
  public record Holder(String key, String name) {}

  /**
   * A round in a list.
   *
   * @param redFlag whether a caution of its advice forbids tightening, or says stop
   * @param cause id of the most likely cause; null if none was likely enough to justify a change
   * @param sign id of the sign that supports it most; null without one
   * @param sheet id of the pattern sheet, or null
   * @param sizeCut the size cut, or null
   */
  public record Gist(boolean redFlag, String cause, String sign, String sheet, String sizeCut) {}
}
