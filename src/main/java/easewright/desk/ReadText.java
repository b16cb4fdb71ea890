package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * A post with marks on the words that were read, and on words about the garment that were not.
 *
 * @param stretches the whole post in order
 * @param unread what was not understood
 * @param conflicts contradictions with the fields; the fields count
 */
public record ReadText(List<Stretch> stretches, List<Unread> unread, List<Conflict> conflicts) {
  /**
   * A passage of the post.
   *
   * @param number the mark's number, from 1; 0 for words without a mark
   * @param meanings what the words were read as; empty if they were not understood
   */
  public record Stretch(String words, int number, List<Meaning> meanings) {
    /** Whether it is marked as not understood. */
    public boolean isUnread() {
      return number > 0 && meanings.isEmpty();
    }

    /** Whether all that it was read as is struck. */
    public boolean isStruck() {
      return number > 0 && !meanings.isEmpty() && meanings.stream().allMatch(Meaning::struck);
    }
  }

  /**
   * What words were read as.
   *
   * @param name in trade terms
   * @param value its value, or null if it has none
   * @param sign the sign it was read as, which a person may strike; null if it is none, or a danger
   * @param field the name of the field that corrects it; null if there is none
   * @param struck whether a person struck it
   * @param denied whether the post denies it
   * @param unitAssumed whether no unit was written
   */
  public record Meaning(
      String name,
      String value,
      String sign,
      String field,
      boolean struck,
      boolean denied,
      boolean unitAssumed) {}

  /** Words not understood, with the signs they may mean that are not reported yet. */
  public record Unread(String words, List<Perhaps> perhaps) {}

  /** A sign that may be meant. */
  public record Perhaps(String sign, String name) {}

  /** What a field says, or null, and the words that contradict it. */
  public record Conflict(String name, String field, String words) {}

  private record Span(int from, int to, Optional<Meaning> meaning) {}

  /**
   * Builds it from the service's result.
   *
   * @param read spans, notUnderstood and conflicts from an answer
   * @param fitting the JSON the pointers of spans refer to
   * @param form reports some signs already, and may have struck others
   * @param dangers ids of the signs that nobody can strike
   */
  static ReadText of(
      String text, JsonNode read, JsonNode fitting, FilledForm form, Set<String> dangers) {
    List<String> reported = Conversation.reportedSigns(form);
    List<Span> spans = new ArrayList<>();
    for (JsonNode span : read.path("spans")) {
      spans.add(span(span, Optional.of(meaning(span, fitting, form, dangers))));
    }
    List<Unread> unread = new ArrayList<>();
    for (JsonNode span : read.path("notUnderstood")) {
      spans.add(span(span, Optional.empty()));
      unread.add(new Unread(span.path("text").asText(), perhaps(span, reported)));
    }
    List<Conflict> conflicts = new ArrayList<>();
    for (JsonNode one : read.path("conflicts")) {
      conflicts.add(
          new Conflict(
              words(one.path("pointer").asText()),
              one.path("field").textValue(),
              one.path("text").asText()));
    }
    return new ReadText(stretches(text, spans), unread, conflicts);
  }

  private static List<Perhaps> perhaps(JsonNode span, List<String> reported) {
    List<Perhaps> perhaps = new ArrayList<>();
    for (JsonNode one : span.path("perhaps")) {
      if (!reported.contains(one.path("sign").asText())) {
        perhaps.add(new Perhaps(one.path("sign").asText(), one.path("name").asText()));
      }
    }
    return perhaps;
  }

  private static Span span(JsonNode span, Optional<Meaning> meaning) {
    return new Span(span.path("from").asInt(), span.path("to").asInt(), meaning);
  }

  private static Meaning meaning(
      JsonNode span, JsonNode fitting, FilledForm form, Set<String> dangers) {
    String pointer = span.path("pointer").asText();
    JsonNode at = fitting.at(pointer);
    boolean assumed = span.path("unitAssumed").asBoolean();
    for (String named : List.of("sign", "adjustment")) {
      if (at.has(named)) {
        String id = at.path(named).asText();
        boolean strikable = named.equals("sign") && !dangers.contains(id);
        return new Meaning(
            words(id),
            at.path("amount").textValue(),
            strikable ? id : null,
            null,
            strikable && form.holds(StruckReadings.STRUCK, id),
            at.path("seen").asText().equals("absent"),
            assumed);
      }
    }
    return new Meaning(
        words(pointer),
        at.isValueNode() && !at.isBoolean() ? at.asText() : null,
        null,
        FieldsOfPost.of(fitting).containsKey(pointer) ? pointer : null,
        false,
        false,
        assumed);
  }

  /** The last name in a pointer or id, in words: "/body/upperChest" is "upper chest". */
  private static String words(String pointer) {
    String[] names = pointer.replaceAll("(?:/[0-9]++)++$", "").split("/");
    return names[names.length - 1]
        .replaceAll("([a-z])([A-Z])", "$1 $2")
        .replace('-', ' ')
        .toLowerCase(Locale.ROOT);
  }

  /** Words with several meanings are marked once. */
  private static List<Stretch> stretches(String text, List<Span> spans) {
    List<Stretch> stretches = new ArrayList<>();
    List<Span> inTurn = spans.stream().sorted(Comparator.comparingInt(Span::from)).toList();
    int at = 0;
    int number = 0;
    for (int i = 0; i < inTurn.size(); ) {
      int from = inTurn.get(i).from();
      int to = inTurn.get(i).to();
      List<Meaning> meanings = new ArrayList<>();
      for (; i < inTurn.size() && inTurn.get(i).from() < Math.max(to, from + 1); i++) {
        to = Math.max(to, inTurn.get(i).to());
        inTurn.get(i).meaning().ifPresent(meanings::add);
      }
      if (from > at) {
        stretches.add(new Stretch(text.substring(at, from), 0, List.of()));
      }
      stretches.add(new Stretch(text.substring(from, to), ++number, meanings));
      at = to;
    }
    if (at < text.length()) {
      stretches.add(new Stretch(text.substring(at), 0, List.of()));
    }
    return stretches;
  }
}
