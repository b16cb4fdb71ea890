package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import easewright.measure.BadQuantity;
import easewright.measure.Length;
import easewright.measure.Quantity;
import easewright.measure.UnitSystem;
import easewright.naming.NearestName;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;

/**
 * A field of a request. A faulty value is added to the list of faults, with its pointer, and reads
 * as null; a missing value reads as null without a fault.
 *
 * @param node the value; a missing node if absent
 * @param within the object or list that holds it; null for the request itself
 * @param name its name or number there
 * @param faults collects the faults
 */
record RequestField(JsonNode node, RequestField within, String name, Faults faults) {
  private static final int LONGEST_NAME = 80;

  /** The request itself. */
  RequestField(JsonNode node, Faults faults) {
    this(node, null, "", faults);
  }

  /** Its location (RFC 6901). */
  String pointer() {
    return within == null
        ? ""
        : within.pointer() + "/" + name.replace("~", "~0").replace("/", "~1");
  }

  boolean isWritten() {
    return !node.isMissingNode();
  }

  /** The member of this name, present or not. */
  RequestField at(String member) {
    return new RequestField(node.path(member), this, member, faults);
  }

  /**
   * Checks that this is an object with only these members, and returns it; empty unless it is an
   * object.
   */
  RequestField fields(String... known) {
    if (isWritten() && !node.isObject()) {
      unreadable(
          "An object is needed here.",
          "Write { } with these fields: " + NearestName.listed(List.of(known)) + ".");
      return new RequestField(MissingNode.getInstance(), within, name, faults);
    }
    List<String> names = List.of(known);
    node.fieldNames()
        .forEachRemaining(
            member -> {
              if (!names.contains(member)) {
                at(member)
                    .unreadable(
                        "No field of this name is known here.", NearestName.remedy(member, names));
              }
            });
    return this;
  }

  /** The items of a list of limited length; empty unless it is a list. */
  List<RequestField> items(int most) {
    List<RequestField> items = new ArrayList<>();
    if (isWritten() && !node.isArray()) {
      unreadable("A list is needed here.", "Write the items between [ and ].");
    } else if (node.size() > most) {
      impossible(
          "There are " + node.size() + " items here.", "At most " + most + " are taken at once.");
    } else {
      for (int i = 0; i < node.size(); i++) {
        items.add(new RequestField(node.get(i), this, String.valueOf(i), faults));
      }
    }
    return items;
  }

  /** A short text. */
  String text() {
    if (!isWritten()) {
      return null;
    }
    if (!node.isTextual()) {
      unreadable(
          "A text is needed here.", "Write it between double quotes, or leave the field out.");
      return null;
    }
    String text = node.textValue();
    if (HiddenCharacters.areIn(text)) {
      unreadable(
          "There are signs in this text that nobody sees.",
          "Leave out control characters and marks that change the direction of writing.");
      return null;
    }
    if (text.isBlank() || text.length() > LONGEST_NAME) {
      unreadable(
          text.isBlank() ? "The text is empty." : "The text is too long for a name.",
          "Write 1 to " + LONGEST_NAME + " characters, or leave the field out.");
      return null;
    }
    return text;
  }

  /** One of some known names. */
  String oneOf(Collection<String> known) {
    String text = text();
    if (text == null || known.contains(text)) {
      return text;
    }
    unreadable("No such name is known here.", NearestName.remedy(text, known));
    return null;
  }

  /** True or false. */
  boolean flag() {
    if (isWritten() && !node.isBoolean()) {
      unreadable(
          "Yes or no is needed here.", "Write true or false without quotes, or leave it out.");
    }
    return node.asBoolean(false);
  }

  /** A whole number without a unit. */
  Integer count(int least, int most) {
    if (!isWritten()) {
      return null;
    }
    String remedy = "Write a whole number from " + least + " to " + most + ", without quotes.";
    if (!node.isIntegralNumber()) {
      unreadable("A whole number is needed here.", remedy);
      return null;
    }
    if (!node.canConvertToInt() || node.intValue() < least || node.intValue() > most) {
      impossible("The number is out of range.", remedy);
      return null;
    }
    return node.intValue();
  }

  /** A quantity with its unit, as one dimension. */
  <T> T quantity(Function<Quantity, T> as) {
    if (!isWritten()) {
      return null;
    }
    if (!node.isTextual()) {
      unreadable(
          node.isNumber() ? "The number has no unit." : "A quantity is needed here.",
          "Write number and unit as a text: \"86.5 cm\" or \"34 1/4 in\".");
      return null;
    }
    try {
      return as.apply(Quantity.parse(node.textValue()));
    } catch (BadQuantity bad) {
      unreadable(bad.problem(), bad.remedy());
      return null;
    }
  }

  /** A length in the unit it was written in. */
  Quantity writtenLength() {
    return quantity(
        quantity -> {
          quantity.length(); // refuses other dimensions
          return quantity;
        });
  }

  /**
   * A length between two limits, given as ids of parameters in millimetres.
   *
   * @param leastId null for none
   */
  Length length(String leastId, String mostId) {
    double leastMm = leastId == null ? 0 : faults.words().bound(leastId);
    double mostMm = faults.words().bound(mostId);
    Quantity written = writtenLength();
    if (written == null) {
      return null;
    }
    Length length = written.length();
    if (length.mm() >= leastMm && length.mm() <= mostMm) {
      return length;
    }
    UnitSystem system = written.system();
    impossible(
        "The length " + length.text(system) + " is out of range here.",
        "Check the unit: from "
            + Length.ofMm(leastMm).text(system)
            + " to "
            + Length.ofMm(mostMm).text(system)
            + " is possible.");
    return null;
  }

  /** Reports that something about the trade is missing, with the sentence for what to write. */
  void needs(String remedyKey) {
    needed(faults.words().say(remedyKey));
  }

  /**
   * Reports that the value is impossible, with a sentence of this key and one of the same key with
   * "-remedy".
   *
   * @param blanks name and value of each blank of either, in turn
   */
  void cannotBe(String key, Object... blanks) {
    RequestWords words = faults.words();
    impossible(words.say(key, blanks), words.say(key + "-remedy", blanks));
  }

  /** Reports in the same way that the value cannot be read. */
  void cannotBeRead(String key, Object... blanks) {
    RequestWords words = faults.words();
    unreadable(words.say(key, blanks), words.say(key + "-remedy", blanks));
  }

  /** Reports that something required is missing. */
  void needed(String what) {
    unreadable("This is needed.", what);
  }

  void unreadable(String problem, String remedy) {
    faults.unreadable(pointer(), problem, remedy);
  }

  void impossible(String problem, String remedy) {
    faults.impossible(pointer(), problem, remedy);
  }
}
