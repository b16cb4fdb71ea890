package easewright.desk;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import easewright.saying.SignNote;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Questions answered by a button: the reply joins the ticked signs, what it changed is worked out
 * from the answer without it, and it can be taken back.
 */
final class QuestionReplies {
  /** A pressed button; its value is a list of signs and a sign, as "notSeen/band-digs-in". */
  static final String REPLY = "reply";

  /** A pressed button; its value is a sign. */
  static final String TAKE_BACK = "takeBack";

  /** The signs replied to so far, in order; several hidden fields. */
  static final String REPLIED = "replied";

  private static final List<String> LISTS =
      List.of(Conversation.SEEN, Conversation.NOT_SEEN, Conversation.COULD_NOT_TELL);
  private static final int MOST_MOVES = 2;

  /** Smaller changes round to the same percentage, or nearly. */
  private static final double LEAST_MOVE = 0.02;

  private QuestionReplies() {}

  /**
   * A reply that still counts.
   *
   * @param list the list that it put the sign into: "seen", "notSeen" or "couldNotTell"
   * @param latest whether its button was pressed last
   */
  public record Given(String sign, String name, String list, boolean latest) {}

  /**
   * How a reply changed a cause.
   *
   * @param from its probability before, from 0 to 1; null where it was not among the causes named
   * @param to its probability now; null where it is no longer named
   */
  public record Moved(String name, Double from, Double to) {
    private double by() {
      return Math.abs((from == null ? 0 : from) - (to == null ? 0 : to));
    }
  }

  /** The form with the pressed button's reply among its signs. */
  static FilledForm taken(FilledForm form) {
    FilledForm taken = form;
    for (String pressed : form.values(REPLY)) {
      String[] parts = pressed.split("/", 2);
      if (parts.length == 2 && LISTS.contains(parts[0])) {
        taken = with(taken, parts[0], parts[1]);
      }
    }
    for (String sign : form.values(TAKE_BACK)) {
      taken = without(taken, sign);
    }
    return taken;
  }

  private static FilledForm with(FilledForm form, String list, String sign) {
    FilledForm free = without(form, sign);
    return free.with(
        Map.of(list, added(free.values(list), sign), REPLIED, added(free.values(REPLIED), sign)));
  }

  /** The form as if a sign had never been replied to. */
  static FilledForm without(FilledForm form, String sign) {
    Map<String, List<String>> rest = new HashMap<>();
    Stream.concat(LISTS.stream(), Stream.of(REPLIED))
        .forEach(
            name ->
                rest.put(
                    name, form.values(name).stream().filter(one -> !one.equals(sign)).toList()));
    return form.with(rest);
  }

  private static List<String> added(List<String> signs, String sign) {
    Set<String> added = new LinkedHashSet<>(signs);
    added.add(sign);
    return List.copyOf(added);
  }

  /** The sign whose button was pressed. */
  static Optional<String> pressed(FilledForm form) {
    return form.values(REPLY).stream()
        .map(pressed -> pressed.substring(pressed.indexOf('/') + 1))
        .filter(sign -> form.holds(REPLIED, sign))
        .reduce((earlier, later) -> later);
  }

  /** The replies that still count, the latest first. */
  static List<Given> given(FilledForm form, List<SignNote> signs) {
    List<Given> given = new ArrayList<>();
    String latest = pressed(form).orElse("");
    for (String sign : form.values(REPLIED)) {
      Optional<SignNote> note = signs.stream().filter(one -> one.id().equals(sign)).findFirst();
      Optional<String> list = LISTS.stream().filter(one -> form.holds(one, sign)).findFirst();
      if (note.isPresent() && list.isPresent()) {
        given.add(0, new Given(sign, note.get().name(), list.get(), sign.equals(latest)));
      }
    }
    return given;
  }

  /** The causes that moved most between two answers, the largest move first. */
  static List<Moved> moved(Answer before, Answer after) {
    Map<String, Moved> moved = new HashMap<>();
    for (CauseNote cause : after.causes()) {
      moved.put(cause.id(), new Moved(cause.name(), null, cause.probability()));
    }
    for (CauseNote cause : before.causes()) {
      Moved now = moved.get(cause.id());
      moved.put(
          cause.id(), new Moved(cause.name(), cause.probability(), now == null ? null : now.to()));
    }
    return moved.values().stream()
        .filter(one -> one.by() >= LEAST_MOVE)
        .sorted(Comparator.comparingDouble(Moved::by).reversed().thenComparing(Moved::name))
        .limit(MOST_MOVES)
        .toList();
  }
}
