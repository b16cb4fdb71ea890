package easewright.clinic;

import java.util.List;

/**
 * One reply to many cases that ask the same: each is answered or refused by itself.
 *
 * @param cases one for each case named, in that order
 */
public record GroupReply(List<Given> cases) {
  /** The most cases answered at once. */
  public static final int MOST = 100;

  public GroupReply {
    cases = List.copyOf(cases);
  }

  /** A case with the version it was read in. */
  public record Addressed(String caseId, int seen) {}

  /** Why a case was not answered. */
  public enum Refusal {
    /** It has changed since, or somebody else has it. */
    OVERTAKEN,
    NOT_FOUND,
    /** It may be about more than a garment, and needs a reply of its own. */
    RED_FLAG,
    /** It has no round. */
    NOTHING_ASKED
  }

  /**
   * What became of one case.
   *
   * @param refusal null when it was answered
   * @param version now in force; null where there is no case
   * @param holder the name of whoever has it; null when nobody has
   */
  public record Given(String caseId, Refusal refusal, Integer version, String holder) {}
}
