package easewright.clinic;

import java.util.List;

/**
 * One reply to many cases with the same question: each is answered or rejected separately.
 *
 * @param cases one for each case named, in that order
 */
public record GroupReply(List<Given> cases) {
  /** Maximum number of cases answered at once. */
  public static final int MOST = 100;

  public GroupReply {
    cases = List.copyOf(cases);
  }

  /** A case with the version it was read at. */
  public record Addressed(String caseId, int seen) {}

  /** Why a case was not answered. */
  public enum Refusal {
    /** It has changed since, or somebody else holds it. */
    OVERTAKEN,
    NOT_FOUND,
    /** It may be about more than a garment, and needs an individual reply. */
    RED_FLAG,
    /** It has no round. */
    NOTHING_ASKED
  }

  /**
   * The outcome for one case.
   *
   * @param refusal null if it was answered
   * @param version the current version; null if there is no such case
   * @param holder the holder's name; null if there is none
   */
  public record Given(String caseId, Refusal refusal, Integer version, String holder) {}
}
