package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.intake.Reading.TextRead;

/**
 * Adds the circumstances that a text reports to a draft; of two reports the more cautious one
 * applies.
 */
final class TextCircumstances {
  private static final String MONTHS = "monthsSinceOperation";

  private final DraftFitting draft;

  TextCircumstances(DraftFitting draft) {
    this.draft = draft;
  }

  void put(TextRead read) {
    String field = CircumstancesReader.field(read.value());
    ObjectNode circumstances = draft.fields().withObject("/circumstances");
    JsonNode sent = circumstances.path(field);
    if (!sent.isMissingNode()) {
      if (sent.isBoolean() && !sent.booleanValue()) {
        draft.conflict("/circumstances/" + field, "false", read.span());
        circumstances.put(field, true);
      }
      return;
    }
    if (field.equals(CircumstancesReader.IMPACT)) {
      circumstances.put(field, read.value().substring(0, read.value().indexOf('-')));
    } else {
      circumstances.put(field, true);
    }
    draft.readAt("/circumstances/" + field, read.span(), read.confidence(), null);
  }

  void putMonths(TextRead read) {
    ObjectNode circumstances = draft.fields().withObject("/circumstances");
    String pointer = "/circumstances/" + MONTHS;
    int months = Integer.parseInt(read.value());
    JsonNode sent = circumstances.path(MONTHS);
    if (sent.isMissingNode()) {
      circumstances.put(MONTHS, months);
      draft.readAt(pointer, read.span(), read.confidence(), null);
    } else if (sent.isInt() && sent.intValue() != months) {
      draft.conflict(pointer, sent.asText(), read.span());
      circumstances.put(MONTHS, Math.min(months, sent.intValue())); // the more cautious value
    }
  }
}
