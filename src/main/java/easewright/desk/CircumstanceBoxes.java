package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.request.CircumstancesReader;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Checkboxes for circumstances that affect comfort and safety, such as nursing. */
final class CircumstanceBoxes {
  private static final String AT = "/circumstances/";

  /** Pointers of all checkboxes; each is also the checkbox's name. */
  static final List<String> FLAGS = CircumstancesReader.flags().stream().map(AT::concat).toList();

  /** States that the checkboxes show earlier reports, so that an empty one withdraws its report. */
  private static final String SHOWN = "circumstancesShown";

  private CircumstanceBoxes() {}

  /**
   * Adds the ticked circumstances; an earlier one stays unless its checkbox was shown and is empty.
   */
  static void put(FilledForm form, ObjectNode request) {
    if (form.ticked(SHOWN) && request.get("circumstances") instanceof ObjectNode reported) {
      CircumstancesReader.flags().stream()
          .filter(flag -> reported.path(flag).asBoolean())
          .forEach(
              flag -> reported.put(flag, false)); // explicit, so that no earlier round restores it
    }
    form.put(List.of(), FLAGS, request);
  }

  /** The checkboxes for an earlier request. */
  static Map<String, List<String>> boxes(JsonNode soFar) {
    Map<String, List<String>> boxes = new HashMap<>();
    boxes.put(SHOWN, List.of(FilledForm.YES));
    for (String flag : CircumstancesReader.flags()) {
      boolean reported = soFar.path("circumstances").path(flag).asBoolean();
      boxes.put(AT + flag, reported ? List.of(FilledForm.YES) : List.of());
    }
    return boxes;
  }
}
