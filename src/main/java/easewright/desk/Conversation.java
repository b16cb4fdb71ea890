package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.request.RequestJson;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Converts a form of the desk to a request. Earlier messages are carried in a hidden field, since
 * nothing is stored; the checkboxes decide which signs count.
 */
final class Conversation {
  static final String TEXT = "text";
  static final String SEEN = "seen";
  static final String NOT_SEEN = "notSeen";
  static final String COULD_NOT_TELL = "couldNotTell";
  static final String SO_FAR = "soFar";
  static final String ASKED = "asked";

  /**
   * States that the checkboxes show signs reported earlier, so that an empty one withdraws its
   * sign.
   */
  private static final String SIGNS_SHOWN = "signsShown";

  /** States that there are words only a person can judge, and whether somebody has. */
  private static final String UNJUDGED = "unjudged";

  private static final String JUDGED = "judged";
  private static final String NOT_TRIED = "notTried";

  /** Id of the family whose places the form shows; empty for the usual one. */
  static final String FAMILY = "family";

  /** Pattern sheet and size cut in one field: "quillmere-top" or "quillmere-top/75C". */
  static final String GARMENT = "garment";

  static final List<Field> MEASURED =
      List.of(
          Field.length("/cloth/main/around/marked"),
          Field.length("/cloth/main/around/stretched"),
          Field.length("/cloth/main/around/relaxed"),
          Field.length("/cloth/main/along/marked"),
          Field.length("/cloth/main/along/stretched"),
          Field.length("/cloth/main/along/relaxed"));
  private static final List<String> REPORT_FIELDS =
      Stream.concat(
              Stream.of(TEXT, SEEN, NOT_SEEN, COULD_NOT_TELL, SO_FAR, GARMENT),
              Stream.concat(
                  Stream.concat(
                      MEASURED.stream().map(Field::pointer), ToileFields.names().stream()),
                  CircumstanceBoxes.FLAGS.stream()))
          .toList();

  private Conversation() {}

  /** Whether the form reports anything yet. */
  static boolean isStarted(FilledForm form) {
    return form.isFilled(REPORT_FIELDS);
  }

  /** Every sign the checkboxes report. */
  static List<String> reportedSigns(FilledForm form) {
    return Stream.of(SEEN, NOT_SEEN, COULD_NOT_TELL)
        .flatMap(name -> form.values(name).stream())
        .toList();
  }

  /**
   * The request for a fitting.
   *
   * @param dangers ids of the signs that apply until ticked as not seen
   */
  static ObjectNode request(FilledForm form, Set<String> dangers) {
    ObjectNode request = earlier(form);
    form.put(MEASURED, List.of(), request);
    leaveOutUntried(form, request);
    ToileFields.put(form, request);
    CircumstanceBoxes.put(form, request);
    if (!form.value(FAMILY).isEmpty()) {
      request.put(FAMILY, form.value(FAMILY));
    }
    String garment = form.value(GARMENT);
    if (!garment.isEmpty()) {
      String[] sheetAndSize = garment.split("/", 2);
      request.putObject("pattern").put("sheet", sheetAndSize[0]);
      if (sheetAndSize.length == 2) {
        request.put("sizeCut", sheetAndSize[1]).remove("sizeSystem");
      } else if (form.value("/sizeCut").isEmpty()) {
        request.remove("sizeCut");
      }
    }
    putSigns(form, request, dangers);
    if (form.ticked(JUDGED)) {
      request.putArray("readYourself"); // explicit, so that no earlier round restores them
    }
    String text = form.value(TEXT);
    if (!text.isEmpty()) {
      request.put(TEXT, text);
      if (!form.value(ASKED).isEmpty()) {
        request.put(ASKED, form.value(ASKED));
      }
    }
    return request;
  }

  /** Advice counts as tried once its outcome is reported, unless another change was. */
  private static void leaveOutUntried(FilledForm form, ObjectNode request) {
    List<String> untried = form.values(NOT_TRIED);
    if (!untried.isEmpty() && request.get("earlier") instanceof ArrayNode earlier) {
      earlier.removeIf(one -> untried.contains(one.path("adjustment").asText()));
    }
  }

  /** The changes tried before, from the hidden field. */
  static List<CaseViews.Tried> tried(FilledForm form) {
    return CaseViews.tried(earlier(form));
  }

  private static ObjectNode earlier(FilledForm form) {
    String soFar = form.value(SO_FAR);
    JsonNode json =
        soFar.isEmpty() ? null : RequestJson.parse(soFar.getBytes(StandardCharsets.UTF_8));
    return json instanceof ObjectNode object ? object : JsonNodeFactory.instance.objectNode();
  }

  /**
   * Adds the ticked signs; their details (side, amount) from earlier messages stay unless the form
   * changes them.
   */
  private static void putSigns(FilledForm form, ObjectNode request, Set<String> dangers) {
    ArrayNode signs = JsonNodeFactory.instance.arrayNode();
    List<String> put = new ArrayList<>();
    for (String box : List.of(SEEN, NOT_SEEN)) {
      String seen = box.equals(SEEN) ? "present" : "absent";
      Set<String> ticked = new LinkedHashSet<>(form.values(box));
      if (box.equals(SEEN)) {
        ticked.addAll(standing(form, request, dangers));
      }
      for (String sign : ticked) {
        if (put.contains(sign)) {
          continue; // ticked both ways: what was seen may be a danger, so it counts
        }
        List<ObjectNode> known = known(request, sign, seen);
        known.forEach(signs::add);
        ObjectNode report =
            known.isEmpty() ? signs.addObject().put("sign", sign).put("seen", seen) : known.get(0);
        if (box.equals(SEEN) && known.size() < 2) {
          SignDetails.put(form, sign, report);
        }
        put.add(sign);
      }
    }
    request.remove("signs");
    if (!signs.isEmpty()) {
      request.set("signs", signs);
    }
    request.remove(COULD_NOT_TELL);
    form.values(COULD_NOT_TELL).stream()
        .distinct()
        .filter(sign -> !put.contains(sign))
        .forEach(sign -> request.withArray(COULD_NOT_TELL).add(sign));
  }

  /**
   * Signs seen earlier that no checkbox withdraws; a danger is withdrawn only by its checkbox
   * "looked, not seen".
   */
  private static List<String> standing(FilledForm form, ObjectNode request, Set<String> dangers) {
    List<String> standing = new ArrayList<>();
    for (JsonNode one : request.path("signs")) {
      String sign = one.path("sign").asText();
      if (!one.path("seen").asText().equals("absent")
          && (dangers.contains(sign) || !form.ticked(SIGNS_SHOWN))
          && !form.holds(NOT_SEEN, sign)) {
        standing.add(sign);
      }
    }
    return standing;
  }

  private static List<ObjectNode> known(ObjectNode request, String sign, String seen) {
    List<ObjectNode> known = new ArrayList<>();
    for (JsonNode one : request.path("signs")) {
      if (one instanceof ObjectNode report
          && one.path("sign").asText().equals(sign)
          && one.path("seen").asText().equals(seen)) {
        known.add(report);
      }
    }
    return known;
  }

  /**
   * The form for the next message: earlier reports are in the hidden field and the checkboxes, and
   * the text area is empty.
   *
   * @param asked the sign asked about, or ""
   */
  static FilledForm goingOn(FilledForm form, JsonNode soFar, String asked) {
    List<String> seen = new ArrayList<>();
    List<String> notSeen = new ArrayList<>();
    for (JsonNode sign : soFar.path("signs")) {
      (sign.path("seen").asText().equals("absent") ? notSeen : seen)
          .add(sign.path("sign").asText());
    }
    List<String> couldNotTell = new ArrayList<>();
    soFar.path(COULD_NOT_TELL).forEach(sign -> couldNotTell.add(sign.asText()));
    return form.with(SignDetails.fields(soFar.path("signs")))
        .with(ToileFields.fields(soFar))
        .with(CircumstanceBoxes.boxes(soFar))
        .with(
            Map.of(
                SIGNS_SHOWN,
                List.of(FilledForm.YES),
                JUDGED,
                List.of(),
                UNJUDGED,
                soFar.path("readYourself").isEmpty() ? List.of() : List.of(FilledForm.YES)))
        .with(
            Map.of(
                TEXT,
                List.of(),
                SEEN,
                seen,
                NOT_SEEN,
                notSeen,
                COULD_NOT_TELL,
                couldNotTell,
                QuestionReplies.REPLIED,
                List.of(),
                StruckReadings.STRUCK,
                List.of(),
                SO_FAR,
                List.of(soFar.toString()),
                ASKED,
                List.of(asked)));
  }
}
