package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TimeRead;
import easewright.rulebook.Catalog;
import easewright.rulebook.RuleBookSource;
import java.util.List;

/**
 * Adds the signs that a text reports to a draft. A danger that the text reports applies, whatever
 * the fields say.
 */
final class TextSigns {
  private final DraftFitting draft;
  private final Catalog catalog;
  private final double certainFrom;

  TextSigns(DraftFitting draft, RuleBookSource book) {
    this.draft = draft;
    this.catalog = book.catalog();
    this.certainFrom = book.parameter("reading-certain-from");
  }

  void put(SignRead read) {
    boolean danger = catalog.signs().get(read.id()).redFlag();
    if (danger && read.present() && allAbsent(read.id())) {
      draft.conflict("/signs", read.id() + ", absent", read.span());
      for (JsonNode sent : draft.fields().path("signs")) {
        if (read.id().equals(sent.path("sign").textValue())) {
          ((ObjectNode) sent).put("seen", "present");
        }
      }
      return;
    }
    for (JsonNode sent : draft.fields().path("signs")) {
      if (read.id().equals(sent.path("sign").textValue())) {
        if (sent.has("sure") && read.confidence() >= sent.path("sure").doubleValue()) {
          settle((ObjectNode) sent, read);
          return;
        }
        boolean present = !"absent".equals(sent.path("seen").textValue());
        if (present != read.present()) {
          draft.conflict("/signs", read.id() + (present ? "" : ", absent"), read.span());
        }
        return;
      }
    }
    ArrayNode signs = draft.fields().withArray("signs");
    if (signs.size() >= SignsReader.MOST_SIGNS && !danger) {
      return; // one danger too many gets the request rejected rather than being overlooked
    }
    ObjectNode sign = signs.addObject().put("sign", read.id());
    sign.put("seen", read.present() ? "present" : "absent");
    DraftFitting.putIfSaid(sign, "place", read.place());
    DraftFitting.putIfSaid(sign, "side", read.side());
    DraftFitting.putIfSaid(sign, "degree", read.degree());
    DraftFitting.putIfSaid(sign, "amount", read.amount());
    if (!danger) {
      putSure(sign, read);
    }
    draft.readAt("/signs/" + (signs.size() - 1), read.span(), read.confidence(), read.because());
  }

  /** Replaces an earlier, doubtful report by this one, which is more certain. */
  private void settle(ObjectNode sent, SignRead read) {
    sent.put("seen", read.present() ? "present" : "absent").remove("sure");
    if (!read.present()) {
      sent.remove(List.of("degree", "amount"));
    }
    putSure(sent, read);
  }

  private void putSure(ObjectNode sign, SignRead read) {
    if (read.confidence() < certainFrom) {
      sign.put("sure", Math.max(1, Math.round(100 * read.confidence())) / 100.0);
    }
  }

  /** Adds the times when a sign shows to a report from the text itself. */
  void time(TimeRead read) {
    JsonNode signs = draft.fields().path("signs");
    for (int i = 0; i < signs.size(); i++) {
      String pointer = "/signs/" + i;
      boolean ours = draft.spans().stream().anyMatch(one -> one.pointer().equals(pointer));
      if (ours && read.sign().equals(signs.get(i).path("sign").textValue())) {
        ArrayNode when = ((ObjectNode) signs.get(i)).withArray("when");
        if (!holds(when, read.time())) {
          when.add(read.time());
          draft.readAt(
              pointer + "/when/" + (when.size() - 1), read.span(), read.confidence(), null);
        }
      }
    }
  }

  private static boolean holds(ArrayNode names, String name) {
    for (JsonNode one : names) {
      if (name.equals(one.textValue())) {
        return true;
      }
    }
    return false;
  }

  /** Whether the fields mention a sign and deny it everywhere. */
  private boolean allAbsent(String id) {
    boolean absent = false;
    for (JsonNode sent : draft.fields().path("signs")) {
      if (id.equals(sent.path("sign").textValue())) {
        if (!"absent".equals(sent.path("seen").textValue())) {
          return false;
        }
        absent = true;
      }
    }
    return absent;
  }
}
