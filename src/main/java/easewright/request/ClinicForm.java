package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.clinic.Clinic;
import easewright.clinic.GroupReply;
import easewright.clinic.TextLimits;
import easewright.naming.KebabCase;
import easewright.naming.NearestName;
import java.util.ArrayList;
import java.util.List;

/** Reads the small requests of the clinic, and reports all faults of one at once. */
public final class ClinicForm {
  private final Faults faults = new Faults();
  private final RequestField root;

  /**
   * Starts reading a request.
   *
   * @param fields the names it may have
   */
  public ClinicForm(JsonNode request, String... fields) {
    root = new RequestField(request, faults).fields(fields);
  }

  /** A required name. */
  public String name(String field) {
    RequestField spot = root.at(field);
    if (!spot.isWritten()) {
      spot.needed("Write a name of 1 to " + TextLimits.LONGEST_NAME + " characters.");
    }
    return spot.text();
  }

  /** An id, or null if the field is missing. */
  public String idOrNone(String field) {
    return root.at(field).text();
  }

  /** Free text, or null if the field is missing. */
  public String textOrNone(String field) {
    RequestField spot = root.at(field);
    if (!spot.isWritten()) {
      return null;
    }
    String text = spot.node().textValue();
    if (text == null || text.isBlank() || text.length() > TextLimits.LONGEST_TEXT) {
      spot.unreadable(
          "A text is needed here.",
          "Write 1 to " + TextLimits.LONGEST_TEXT + " characters between double quotes.");
      return null;
    }
    if (text.indexOf(TextReader.NUL) >= 0) {
      spot.unreadable("The text holds the character NUL.", "Leave it out.");
      return null;
    }
    return text;
  }

  /** Required free text. */
  public String text(String field) {
    if (!root.at(field).isWritten()) {
      root.at(field).needed("Write a text.");
    }
    return textOrNone(field);
  }

  /** The version a change is based on. */
  public int version() {
    Integer version = root.at("version").count(1, Integer.MAX_VALUE);
    if (!root.at("version").isWritten()) {
      root.at("version").needed("Send the version that was read before.");
    }
    return version == null ? 0 : version;
  }

  /** Cases with the versions they were read at; at least one, no duplicates. */
  public List<GroupReply.Addressed> cases() {
    RequestField list = root.at("cases");
    if (!list.isWritten() || list.node().isEmpty()) {
      list.needed("Name each case to be answered, and the version that was read before.");
    }
    List<GroupReply.Addressed> cases = new ArrayList<>();
    for (RequestField item : list.items(GroupReply.MOST)) {
      RequestField one = item.fields("case", "version");
      String id = one.at("case").text();
      Integer version = one.at("version").count(1, Integer.MAX_VALUE);
      if (id == null || version == null) {
        one.needed("Name a case, and the version that was read before.");
      } else if (cases.stream().anyMatch(other -> other.caseId().equals(id))) {
        one.impossible("This case is named twice.", "Leave one of them out.");
      } else {
        cases.add(new GroupReply.Addressed(id, version));
      }
    }
    return cases;
  }

  /** How long cases are stored, days. */
  public int retentionDays(int otherwise) {
    Integer days = root.at("retentionDays").count(1, Clinic.MOST_DAYS);
    return days == null ? otherwise : days;
  }

  /** One of an enumeration's constants, written in kebab case. */
  public <E extends Enum<E>> E oneOf(String field, List<E> constants) {
    RequestField spot = root.at(field);
    if (!spot.isWritten()) {
      spot.needed("Write one of " + NearestName.listed(names(constants)) + ".");
    }
    String name = spot.oneOf(names(constants));
    return constants.stream()
        .filter(one -> KebabCase.of(one).equals(name))
        .findFirst()
        .orElse(null);
  }

  private static List<String> names(List<? extends Enum<?>> constants) {
    return constants.stream().map(KebabCase::of).toList();
  }

  /** Rejects the request if it has faults; call it after reading all fields. */
  public void refuseFaulty() {
    faults.refuse();
  }
}
