package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.pattern.OptionConflict;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.pattern.SentSheets;
import easewright.pattern.SheetChoice;
import easewright.pattern.SheetFault;
import easewright.pattern.SheetFaults;
import easewright.pattern.SizeNames;
import easewright.size.LabelReading;
import easewright.size.Region;
import easewright.size.SizeLabel;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads the pattern (a shipped sheet or an uploaded one), the size cut and the choices. */
final class PatternReader {
  private static final int MOST_CHOICES = 30;

  /** The name of a sheet that an earlier request sent along. */
  static final String SENT = "sent";

  private final PatternSheet sheet;
  private final Region region;
  private final String sizeCut;
  private final Map<String, String> choices = new LinkedHashMap<>();

  /**
   * @param sizeCut the size, by any name that the sheet has for it
   * @param sizeSystem the region that calls the size so
   */
  PatternReader(
      RequestField pattern,
      RequestField sizeCut,
      RequestField sizeSystem,
      RequestField choices,
      PatternSheets sheets) {
    this.sheet = sheet(pattern, sheets);
    this.region = Region.named(String.valueOf(sizeSystem.oneOf(Region.wireNames()))).orElse(null);
    this.sizeCut = SheetSizes.read(sizeCut, sheet, region);
    checkSystem(sizeSystem);
    readChoices(choices);
  }

  PatternSheet sheet() {
    return sheet;
  }

  String sizeCut() {
    return sizeCut;
  }

  Map<String, String> choices() {
    return choices;
  }

  /** The system that the size cut is a label of; null with a sheet, which has sizes of its own. */
  Region sizeSystem() {
    return sheet == null ? region : null;
  }

  /** The region that calls the named sizes so; null if not stated. */
  Region region() {
    return region;
  }

  private void checkSystem(RequestField spot) {
    if (region != null && sheet != null && !SizeNames.has(sheet, region)) {
      spot.cannotBe("fault-said-by-the-sheet");
    } else if (sheet != null) {
      return;
    } else if (region != null && sizeCut == null) {
      spot.cannotBe("fault-system-of-no-size");
    } else if (region != null && LabelReading.of(SizeLabel.parse(sizeCut), region).isEmpty()) {
      spot.cannotBe("fault-size-of-another-system");
    }
  }

  private static PatternSheet sheet(RequestField pattern, PatternSheets sheets) {
    pattern = pattern.fields("sheet", "inline", SENT);
    if (!pattern.isWritten()) {
      return null;
    }
    RequestField inline = pattern.at("inline");
    RequestField sent = pattern.at(SENT);
    RequestField byId = pattern.at("sheet");
    long named = Stream.of(byId, inline, sent).filter(RequestField::isWritten).count();
    if (named != 1) {
      pattern.cannotBeRead(named > 1 ? "fault-two-patterns" : "fault-no-pattern");
      return null;
    }
    if (sent.isWritten()) {
      Optional<SentSheets.Sent> kept = sheets.sent().find(sent.node().asText());
      if (kept.isEmpty()) {
        sent.cannotBe("fault-sheet-not-kept");
      }
      return kept.map(SentSheets.Sent::sheet).orElse(null);
    }
    if (byId.isWritten()) {
      Optional<PatternSheet> known = sheets.find(byId.node().textValue());
      if (known.isEmpty()) {
        byId.oneOf(sheets.offered().stream().map(PatternSheet::id).toList());
      }
      return known.orElse(null);
    }
    try {
      return sheets.readSent(inline.node());
    } catch (SheetFaults faults) {
      for (SheetFault fault : faults.faults()) {
        inline
            .faults()
            .unreadable(inline.pointer() + fault.pointer(), fault.problem(), fault.remedy());
      }
      return null;
    }
  }

  /** The same request with the sheet itself in place of its name, if it is still kept. */
  static JsonNode withSheet(JsonNode request, PatternSheets sheets) {
    JsonNode pattern = request.path("pattern");
    if (!pattern.has(SENT) || pattern.size() > 1) {
      return request; // named in another way, or in two, which is refused
    }
    Optional<SentSheets.Sent> kept = sheets.sent().find(pattern.path(SENT).asText());
    if (kept.isEmpty()) {
      return request;
    }
    ObjectNode whole = request.deepCopy();
    ((ObjectNode) whole.path("pattern")).removeAll().set("inline", kept.get().json());
    return whole;
  }

  /** The same request with the name of a sheet in place of the sheet itself. */
  static JsonNode withoutSheet(JsonNode request) {
    JsonNode inline = request.path("pattern").path("inline");
    if (!inline.isObject()) {
      return request;
    }
    ObjectNode lean = request.deepCopy();
    ((ObjectNode) lean.path("pattern")).removeAll().put(SENT, SentSheets.nameOf(inline));
    return lean;
  }

  private void readChoices(RequestField spot) {
    if (!spot.isWritten()) {
      return;
    }
    if (!spot.node().isObject()) {
      spot.cannotBeRead("fault-choices");
      return;
    }
    if (spot.node().size() > MOST_CHOICES) {
      spot.cannotBe("fault-many-choices", "count", spot.node().size(), "most", MOST_CHOICES);
      return;
    }
    if (sheet == null) {
      readFreely(spot);
      return;
    }
    spot.fields(sheet.choices().stream().map(SheetChoice::id).toArray(String[]::new));
    for (SheetChoice choice : sheet.choices()) {
      String option =
          spot.at(choice.id())
              .oneOf(choice.options().stream().map(SheetChoice.Option::id).toList());
      if (option != null) {
        choices.put(choice.id(), option);
      }
    }
    try {
      sheet.decided(choices);
    } catch (OptionConflict conflict) {
      spot.cannotBe("fault-options", "choice", conflict.choice(), "option", conflict.option());
    }
  }

  /** Without a sheet any choice may be named: the rules ignore unknown ones. */
  private void readFreely(RequestField spot) {
    for (String choice : (Iterable<String>) spot.node()::fieldNames) {
      String option = spot.at(choice).text();
      if (option != null) {
        choices.put(choice, option);
      }
    }
  }
}
