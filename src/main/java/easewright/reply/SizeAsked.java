package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import easewright.rulebook.Voice.Thing;
import java.util.List;
import java.util.Set;

/**
 * Answers whether to go up or down in size, cup or band.
 *
 * @param change the first change, or null
 * @param trial what is to be tried before any change, or null
 */
record SizeAsked(
    Answer answer,
    RuleBookSource book,
    Voice voice,
    SpokenChange change,
    SpokenTrial trial,
    Verdict verdict) {
  private static final String LARGER = "larger";
  private static final String SMALLER = "smaller";

  /** The phrases that say what to change. */
  static final Set<String> TELLS_CHANGE =
      Set.of("size-yes", "size-opposite", "size-cups", "size-band");

  /**
   * The key of the phrase that answers; null where the size itself is told.
   *
   * @param direction a direction of the voice, or "" for "which size?"
   */
  String key(String direction) {
    if (verdict == Verdict.SOUND) {
      return SpokenCause.isThin(answer, voice) ? "size-untold" : "size-no-sound";
    }
    if (direction.isEmpty() && answer.size() != null) {
      return null;
    }
    if (change == null || verdict != Verdict.CLEAR) {
      return answer.nothingTighter() && isSmaller(direction)
          ? isOfOther(direction) ? "size-not-tighter" : "asked-not-tighter"
          : unclear(direction);
    }
    if (direction.isEmpty()) {
      return "size-no";
    }
    if (goes(direction)) {
      return "size-yes";
    }
    if (goes(opposite(direction))) {
      return "size-opposite";
    }
    if (isPart(direction, "roomier-cups", "smaller-cups")) {
      return "size-cups";
    }
    return isPart(direction, "longer-band", "shorter-band") ? "size-band" : "size-no";
  }

  /** Whether the change is another size. */
  boolean isOfSize() {
    return goes(LARGER) || goes(SMALLER);
  }

  private boolean goes(String direction) {
    return voice
        .talk()
        .directions()
        .getOrDefault(direction, List.of()) // a family may have no such change
        .contains(change == null ? trial.id() : change.id());
  }

  private String unclear(String direction) {
    if (direction.isEmpty() || verdict != Verdict.OPEN || change == null && trial == null) {
      return "size-untold";
    }
    if (goes(direction)) {
      return "size-perhaps";
    }
    boolean part =
        isPart(direction, "roomier-cups", "smaller-cups")
            || isPart(direction, "longer-band", "shorter-band");
    return part ? "size-part" : "size-not-now";
  }

  /** Whether something else than the size is clearly the cause. */
  private boolean isOfOther(String direction) {
    Thing size = voice.talk().things().get("size");
    return verdict == Verdict.CLEAR
        && direction.equals(SMALLER)
        && (size == null
            || !size.isMeantBy(book.catalog().causes().get(answer.causes().get(0).id())));
  }

  private static boolean isSmaller(String direction) {
    return direction.startsWith("s");
  }

  private boolean isPart(String direction, String roomier, String closer) {
    return direction.equals(LARGER) && goes(roomier) || direction.equals(SMALLER) && goes(closer);
  }

  private static String opposite(String direction) {
    return switch (direction) {
      case LARGER -> SMALLER;
      case SMALLER -> LARGER;
      case "roomier-cups" -> "smaller-cups";
      case "smaller-cups" -> "roomier-cups";
      case "longer-band" -> "shorter-band";
      default -> "longer-band";
    };
  }
}
