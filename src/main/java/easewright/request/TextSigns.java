package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.intake.Reading.SignRead;
import easewright.rulebook.Catalog;

/**
 * Adds the signs that a text reports to a draft. A danger that the text reports applies, whatever
 * the fields say.
 */
final class TextSigns {
  private final DraftFitting draft;
  private final Catalog catalog;

  TextSigns(DraftFitting draft, Catalog catalog) {
    this.draft = draft;
    this.catalog = catalog;
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
        boolean present = !"absent".equals(sent.path("seen").textValue());
        if (present != read.present()) {
          draft.conflict("/signs", read.id() + (present ? "" : ", absent"), read.span());
        }
        return;
      }
    }
    ArrayNode signs = draft.fields().withArray("signs");
    if (signs.size() >= FittingReader.MOST_SIGNS && !danger) {
      return; // one danger too many gets the request rejected rather than being overlooked
    }
    ObjectNode sign = signs.addObject().put("sign", read.id());
    sign.put("seen", read.present() ? "present" : "absent");
    DraftFitting.putIfSaid(sign, "place", read.place());
    DraftFitting.putIfSaid(sign, "side", read.side());
    DraftFitting.putIfSaid(sign, "degree", read.degree());
    DraftFitting.putIfSaid(sign, "amount", read.amount());
    draft.readAt("/signs/" + (signs.size() - 1), read.span(), read.confidence(), read.because());
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
