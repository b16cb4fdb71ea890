package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.Map;

/** What a post says of single fields of the form, so that nobody types it again. */
final class FieldsOfPost {
  private FieldsOfPost() {}

  /**
   * The values that a fitting gives, by the name of their field; lists and checkboxes are left out.
   */
  static Map<String, String> of(JsonNode fitting) {
    Map<String, String> values = new LinkedHashMap<>();
    ToileFields.fields(fitting)
        .forEach(
            (name, all) -> {
              if (name.startsWith("/") && !name.equals(ToileFields.FINE) && !all.isEmpty()) {
                values.put(name, all.get(0));
              }
            });
    String sheet = fitting.at("/pattern/sheet").asText();
    String size = fitting.path("sizeCut").asText();
    if (!sheet.isEmpty()) {
      values.put(Conversation.GARMENT, size.isEmpty() ? sheet : sheet + "/" + size);
    }
    return values;
  }
}
