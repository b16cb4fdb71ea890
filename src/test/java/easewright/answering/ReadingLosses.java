package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import easewright.request.FaultyRequest;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Where answers are lost between a post's labels and its reading: for every fit question that the
 * labels answer as its writer would and the reading does not, the facts that differ, and which of
 * them alone brings the right answer when it is put right.
 */
final class ReadingLosses {
  private final Edition edition;
  private final StringBuilder rows = new StringBuilder();

  /** How often each kind of fact alone decided. */
  private final Map<String, Integer> deciding = new TreeMap<>();

  private int lost;

  ReadingLosses(Edition edition) {
    this.edition = edition;
  }

  /** Adds a post, if its reading loses what its labels have. */
  void add(ExpectedAnswer post) {
    if (!post.kind().equals("fit")) {
      return;
    }
    Answer labelled = answer(post.labels());
    Answer read = answer(JsonNodeFactory.instance.objectNode().put("text", post.text()));
    List<String> wanted = new ArrayList<>();
    for (String what : List.of("cause", "advice", "amount")) {
      if (isRight(what, post, labelled) && !isRight(what, post, read)) {
        wanted.add(what);
      }
    }
    if (wanted.isEmpty()) {
      return;
    }
    lost++;
    if (read == null || read.isDanger()) {
      String why = read == null ? "refused" : "stopped for " + read.cautions().get(0).id();
      deciding.merge(read == null ? "refused" : "stopped", 1, Integer::sum);
      rows.append("| %s | %s | %s | |%n".formatted(post.id(), String.join(", ", wanted), why));
      return;
    }
    Map<String, ObjectNode> mended = mended((ObjectNode) read.soFar(), post.labels());
    List<String> decides = new ArrayList<>();
    mended.forEach(
        (fact, request) -> {
          Answer other = answer(request);
          if (wanted.stream().allMatch(what -> isRight(what, post, other))) {
            decides.add(fact);
            deciding.merge(fact.replaceAll(" .*", ""), 1, Integer::sum);
          }
        });
    if (decides.isEmpty()) {
      deciding.merge("several", 1, Integer::sum);
    }
    rows.append(
        "| %s | %s | %s | %s |%n"
            .formatted(
                post.id(),
                String.join(", ", wanted),
                String.join("; ", mended.keySet()),
                String.join("; ", decides)));
  }

  /** A Markdown table of every post that lost, and how often each kind of fact decided. */
  String report() {
    return "| post | lost | what differs | what alone decides |%n|---|---|---|---|%n%s%n%d lost; %s%n"
        .formatted(rows, lost, deciding);
  }

  private Answer answer(ObjectNode request) {
    try {
      return edition.answer(request);
    } catch (FaultyRequest refused) {
      return null;
    }
  }

  private static boolean isRight(String what, ExpectedAnswer post, Answer answer) {
    if (answer == null || answer.isDanger()) {
      return false;
    }
    return switch (what) {
      case "cause" ->
          answer.causes().stream()
              .map(CauseNote::id)
              .limit(1)
              .anyMatch(one -> post.causes().contains(one));
      case "advice" -> post.advises().contains(AnswersCount.advice(answer));
      default -> !post.amountOf().isEmpty() && AnswersCount.saysAmount(post, answer);
    };
  }

  /** The request as it was read, with one fact at a time as it is labelled. */
  private static Map<String, ObjectNode> mended(ObjectNode read, ObjectNode labels) {
    Map<String, ObjectNode> mended = new LinkedHashMap<>();
    Map<String, JsonNode> there = byName(read.path("signs"), "sign");
    Map<String, JsonNode> meant = byName(labels.path("signs"), "sign");
    meant.forEach(
        (id, sign) -> {
          JsonNode other = there.get(id);
          String now = sign.path("seen").asText();
          if (other == null) {
            mended.put(
                now.equals("present") ? "missed +" + id : "undenied -" + id, put(read, sign));
          } else if (!now.equals(seen(other))) {
            mended.put("polarity " + id + " " + seen(other) + " for " + now, put(read, sign));
          } else if (!other.path("amount").equals(sign.path("amount")) && sign.has("amount")) {
            mended.put(
                "amount " + id + " " + other.path("amount") + " for " + sign.path("amount"),
                put(read, sign));
          } else if (other.has("sure")) {
            mended.put("doubt " + id, put(read, sign));
          }
        });
    there.forEach(
        (id, sign) -> {
          if (!meant.containsKey(id)) {
            boolean so = seen(sign).equals("present");
            mended.put(
                (so ? "invented +" : "overdenied -") + id, without(read, "signs", "sign", id));
          }
        });
    Map<String, JsonNode> made = byName(read.path("earlier"), "adjustment");
    Map<String, JsonNode> told = byName(labels.path("earlier"), "adjustment");
    told.forEach(
        (id, change) -> {
          if (!change.path("outcome").equals(made.getOrDefault(id, change).path("outcome"))
              || !made.containsKey(id)) {
            ObjectNode request = without(read, "earlier", "adjustment", id);
            request.withArray("earlier").add(change.deepCopy());
            mended.put("earlier " + change + " read " + made.get(id), request);
          }
        });
    made.forEach(
        (id, change) -> {
          if (!told.containsKey(id)) {
            mended.put("unmade " + change, without(read, "earlier", "adjustment", id));
          }
        });
    for (String field : read.propertyStream().map(Map.Entry::getKey).toList()) {
      if (!List.of("signs", "earlier", "units").contains(field)
          && !labels.path(field).equals(read.path(field))) {
        ObjectNode request = read.deepCopy();
        request.remove(field);
        if (labels.has(field)) {
          request.set(field, labels.path(field).deepCopy());
        }
        mended.put("field " + field + " " + read.path(field), request);
      }
    }
    return mended;
  }

  private static String seen(JsonNode sign) {
    return sign.path("seen").asText("present");
  }

  private static Map<String, JsonNode> byName(JsonNode list, String name) {
    Map<String, JsonNode> byName = new LinkedHashMap<>();
    list.forEach(one -> byName.put(one.path(name).asText(), one));
    return byName;
  }

  private static ObjectNode put(ObjectNode read, JsonNode sign) {
    ObjectNode request = without(read, "signs", "sign", sign.path("sign").asText());
    request.withArray("signs").add(sign.deepCopy());
    return request;
  }

  private static ObjectNode without(ObjectNode read, String list, String name, String id) {
    ObjectNode request = read.deepCopy();
    ArrayNode left = request.putArray(list);
    read.path(list).forEach(one -> keep(one, name, id, left));
    return request;
  }

  private static void keep(JsonNode one, String name, String id, ArrayNode left) {
    if (!one.path(name).asText().equals(id)) {
      left.add(one.deepCopy());
    }
  }
}
