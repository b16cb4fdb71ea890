package easewright.clinic;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * The open cases in the order in which to answer them: red flags, then stuck cases, then the
 * longest waiting. Cases whose wearer is not waiting come last, latest change first.
 *
 * @param entries one for each open case
 */
public record Queue(List<Entry> entries) {
  /** The same order for all cases, closed ones last. */
  static final Comparator<Case> ORDER =
      Comparator.comparing(Case::closed)
          .thenComparing(Reason::of)
          .thenComparing(Case::waitingSince, Comparator.nullsLast(Comparator.naturalOrder()))
          .thenComparing(Case::changedAt, Comparator.reverseOrder())
          .thenComparing(Case::id);

  public Queue {
    entries = List.copyOf(entries);
  }

  /** The reason for a case's position. */
  public enum Reason {
    /** The latest round may be about more than a garment. */
    RED_FLAG,
    /** Two rounds brought no progress. */
    STUCK,
    WAITING,
    /** The latest round was replied to, or there is none yet. */
    ANSWERED;

    static Reason of(Case one) {
      if (one.waitingSince() == null) {
        return ANSWERED;
      }
      if (one.last() != null && one.last().redFlag()) {
        return RED_FLAG;
      }
      return one.stuck() ? STUCK : WAITING;
    }
  }

  /**
   * A case in the queue.
   *
   * @param group the key of its group of same questions; null if it is in none
   */
  public record Entry(Case current, Reason reason, String group) {}

  /**
   * Cases with the same question: their latest rounds have the same most likely cause, supported
   * most by the same sign. One reply can answer them all.
   *
   * @param key cause and sign, so that it is stable while cases come and go
   * @param cases two or more, in the order of the queue
   */
  public record Group(String key, String cause, String sign, List<Case> cases) {}

  /** Queues cases; omits closed ones. */
  public static Queue of(List<Case> cases) {
    List<Case> open =
        cases.stream().filter(one -> !one.closed()).sorted(ORDER).collect(Collectors.toList());
    Map<String, Long> alike =
        open.stream()
            .map(Queue::question)
            .filter(Objects::nonNull)
            .collect(Collectors.groupingBy(key -> key, Collectors.counting()));
    return new Queue(
        open.stream()
            .map(
                one -> {
                  String key = question(one);
                  boolean shared = key != null && alike.get(key) > 1;
                  return new Entry(one, Reason.of(one), shared ? key : null);
                })
            .toList());
  }

  /** Red flags and stuck cases need an individual reply, even if others have the same question. */
  private static String question(Case one) {
    boolean common = Reason.of(one) == Reason.WAITING && one.last() != null;
    return common && one.last().cause() != null && one.last().sign() != null
        ? one.last().cause() + "." + one.last().sign()
        : null;
  }

  /** The groups of same questions, in the order of their first case. */
  public List<Group> groups() {
    Map<String, List<Case>> byKey = new LinkedHashMap<>();
    for (Entry entry : entries) {
      if (entry.group() != null) {
        byKey.computeIfAbsent(entry.group(), key -> new ArrayList<>()).add(entry.current());
      }
    }
    return byKey.entrySet().stream()
        .map(
            group -> {
              Case.Gist asked = group.getValue().get(0).last();
              return new Group(
                  group.getKey(), asked.cause(), asked.sign(), List.copyOf(group.getValue()));
            })
        .toList();
  }
}
