package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.number.TextSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * A reading of the text that a person struck. At its place it does not count; the same thing read
 * elsewhere in the text does, and so does a danger or a circumstance, whoever strikes it.
 *
 * @param id what was read: a sign, a change, an area, a measurement's name, or "sizeCut"
 * @param from index of its first character in the text (UTF-16)
 * @param to index after its last character
 */
record Struck(String id, int from, int to) {
  /** The request field that lists them. */
  static final String FIELD = "struck";

  static final int MOST = 60;

  /** Those of a request; whatever is faulty is left to {@link #check}. */
  static List<Struck> in(JsonNode request) {
    List<Struck> struck = new ArrayList<>();
    for (JsonNode one : request.path(FIELD)) {
      struck.add(
          new Struck(
              one.path("id").asText(), one.path("from").asInt(-1), one.path("to").asInt(-1)));
    }
    return struck;
  }

  /** Whether it strikes this, read at this place. */
  boolean strikes(String read, TextSpan span) {
    return id.equals(read) && from < span.to() && span.from() < to;
  }

  static void check(RequestField list) {
    for (RequestField spot : list.items(MOST)) {
      RequestField one = spot.fields("id", "from", "to");
      if (one.isWritten()) {
        one.at("id").text();
        Integer from = one.at("from").count(0, TextReader.MOST_CHARACTERS);
        Integer to = one.at("to").count(1, TextReader.MOST_CHARACTERS);
        for (String needed : List.of("id", "from", "to")) {
          if (!one.at(needed).isWritten()) {
            one.at(needed).needed("Copy it from a span of the answer's read.");
          }
        }
        if (from != null && to != null && to <= from) {
          one.at("to").impossible("It ends before it begins.", "Write a number above from.");
        }
      }
    }
  }
}
