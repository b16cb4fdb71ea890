package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.clinic.ClinicVoice;
import easewright.clinic.ClinicVoice.PatternName;
import easewright.clinic.ClinicVoice.Snippet;
import easewright.clinic.TextLimits;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Reads how a clinic's replies are to be said, and reports all faults at once. */
public final class VoiceForm {
  private final Faults faults = new Faults();
  private final RequestField root;

  /** Starts reading a request. */
  public VoiceForm(JsonNode request) {
    root =
        new RequestField(request, faults)
            .fields("version", "tone", "units", "opening", "closing", "snippets", "patterns");
  }

  /** The version the change is based on. */
  public int version() {
    RequestField spot = root.at("version");
    Integer version = spot.count(1, Integer.MAX_VALUE);
    if (!spot.isWritten()) {
      spot.needed("Send the version that was read before.");
    }
    return version == null ? 0 : version;
  }

  /**
   * The voice.
   *
   * @param sheets ids of the shipped sheets
   */
  public ClinicVoice voice(Set<String> sheets) {
    String tone = root.at("tone").oneOf(List.of("warm", "plain"));
    String units = root.at("units").oneOf(List.of("metric", "imperial"));
    return new ClinicVoice(
        "plain".equals(tone),
        units,
        words(root.at("opening"), ClinicVoice.LONGEST_LINE, false),
        words(root.at("closing"), ClinicVoice.LONGEST_LINE, false),
        snippets(),
        patterns(sheets));
  }

  private List<Snippet> snippets() {
    List<Snippet> snippets = new ArrayList<>();
    for (RequestField item : root.at("snippets").items(ClinicVoice.MOST_SNIPPETS)) {
      RequestField one = item.fields("name", "text");
      snippets.add(
          new Snippet(
              words(one.at("name"), TextLimits.LONGEST_NAME, true),
              words(one.at("text"), TextLimits.LONGEST_TEXT, true)));
    }
    return List.copyOf(snippets);
  }

  private List<PatternName> patterns(Set<String> sheets) {
    List<PatternName> patterns = new ArrayList<>();
    for (RequestField item : root.at("patterns").items(ClinicVoice.MOST_PATTERNS)) {
      RequestField one = item.fields("sheet", "name");
      if (!one.at("sheet").isWritten()) {
        one.at("sheet").needed("Write the id of a pattern sheet.");
      }
      String sheet = one.at("sheet").oneOf(List.copyOf(sheets));
      patterns.add(new PatternName(sheet, words(one.at("name"), TextLimits.LONGEST_NAME, true)));
    }
    return List.copyOf(patterns);
  }

  private static String words(RequestField spot, int longest, boolean needed) {
    if (!spot.isWritten()) {
      if (needed) {
        spot.needed("Write 1 to " + longest + " characters.");
      }
      return null;
    }
    String text = spot.node().textValue();
    if (text == null
        || text.isBlank()
        || text.length() > longest
        || text.indexOf(TextReader.NUL) >= 0) {
      spot.unreadable("A text is needed here.", "Write 1 to " + longest + " characters.");
      return null;
    }
    return text.strip();
  }

  /** Rejects the request if it has faults; call it after reading all fields. */
  public void refuseFaulty() {
    faults.refuse();
  }
}
