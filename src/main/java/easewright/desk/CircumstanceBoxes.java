package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.request.CircumstancesReader;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The boxes for what else bears on comfort and safety, such as nursing. */
final class CircumstanceBoxes {
  private static final String AT = "/circumstances/";

  /** Pointers of all boxes; each is the box's name. */
  static final List<String> FLAGS = CircumstancesReader.flags().stream().map(AT::concat).toList();

  /** Says that the boxes show what was told earlier, so that an empty one takes it back. */
  private static final String SHOWN = "circumstancesShown";

  private CircumstanceBoxes() {}

  /** Puts what is ticked; what was told earlier stays unless its box was shown and is empty. */
  static void put(FilledForm form, ObjectNode request) {
    if (form.ticked(SHOWN) && request.get("circumstances") instanceof ObjectNode told) {
      CircumstancesReader.flags().stream()
          .filter(flag -> told.path(flag).asBoolean())
          .forEach(flag -> told.put(flag, false)); // said, so that no earlier round brings it back
    }
    form.put(List.of(), FLAGS, request);
  }

  /** The boxes as an earlier request tells them. */
  static Map<String, List<String>> boxes(JsonNode soFar) {
    Map<String, List<String>> boxes = new HashMap<>();
    boxes.put(SHOWN, List.of(FilledForm.YES));
    for (String flag : CircumstancesReader.flags()) {
      boolean told = soFar.path("circumstances").path(flag).asBoolean();
      boxes.put(AT + flag, told ? List.of(FilledForm.YES) : List.of());
    }
    return boxes;
  }
}
