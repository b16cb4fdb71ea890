package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.naming.NearestName;
import easewright.number.TextSpan;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.pattern.SentSheets;
import easewright.rulebook.Catalog;
import easewright.rulebook.Family;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which family of garments a request is about: the one it names, else its pattern sheet's, else the
 * one its text calls by name, else the usual one. A family goes by its id or by anything such
 * garments are called.
 */
public final class FamilyNames {
  static final String FIELD = "family";

  private final Map<String, Family> families;
  private final Map<String, Pattern> called = new LinkedHashMap<>();
  private final Pattern usualParts;
  private final Family usual;
  private final PatternSheets sheets;
  private final RequestWords words;

  /**
   * @param book what families there are
   * @param sheets whose families a request may leave unsaid
   */
  public FamilyNames(RuleBookSource book, PatternSheets sheets) {
    this.families = book.families();
    this.usual = Family.usual(families);
    this.sheets = sheets;
    this.words = new RequestWords(book);
    families.values().forEach(family -> called.put(family.id(), pattern(family.called())));
    this.usualParts = usual.parts().isEmpty() ? null : pattern(usual.parts());
  }

  /** A family that a text calls by name, and where. */
  record Called(String id, TextSpan span) {}

  /** The one that serves requests that tell of none. */
  public String usual() {
    return usual.id();
  }

  /**
   * The id of the family of this name.
   *
   * @throws FaultyRequest with status 422 if there is none
   */
  public String known(String name) {
    return id(name).orElseThrow(() -> FaultyRequest.impossible("/" + FIELD, problem(), near(name)));
  }

  /**
   * The family of a whole request, its text included. One that is not known, which the reader of
   * the request refuses, counts as the usual one.
   */
  public String of(JsonNode request) {
    if (families.size() == 1) {
      return usual.id();
    }
    if (request.has(FIELD)) {
      return id(request.path(FIELD).asText()).orElse(usual.id());
    }
    if (request.has("pattern")) {
      return ofPattern(request.path("pattern")).flatMap(this::id).orElse(usual.id());
    }
    String text = request.path(TextReader.TEXT).asText();
    return SheetNames.in(text, sheets.shipped())
        .flatMap(one -> sheets.find(one.id()))
        .map(PatternSheet::family)
        .or(() -> in(text).map(Called::id))
        .flatMap(this::id)
        .orElse(usual.id());
  }

  private Optional<String> ofPattern(JsonNode pattern) {
    if (pattern.has("inline")) {
      return Optional.ofNullable(pattern.path("inline").path(FIELD).textValue());
    }
    return pattern.has("sheet")
        ? sheets.find(pattern.path("sheet").asText()).map(PatternSheet::family)
        : sheets
            .sent()
            .find(pattern.path(PatternReader.SENT).asText())
            .map(SentSheets.Sent::sheet)
            .map(PatternSheet::family);
  }

  /**
   * The family that a text calls by name; empty if it speaks of the usual one too, or of one of its
   * parts ("cloth left over from leggings, and the straps slip"), or of several, or of none.
   */
  Optional<Called> in(String text) {
    if (families.size() == 1 || usualParts != null && usualParts.matcher(text).find()) {
      return Optional.empty();
    }
    List<Called> named = new ArrayList<>();
    called.forEach(
        (family, pattern) -> {
          Matcher matcher = pattern.matcher(text);
          if (matcher.find()) {
            named.add(new Called(family, new TextSpan(matcher.start(), matcher.end())));
          }
        });
    return named.size() == 1 && !named.get(0).id().equals(usual.id())
        ? Optional.of(named.get(0))
        : Optional.empty();
  }

  /**
   * Reads the family of a request whose text is read already; an unknown one is a fault.
   *
   * @param sheet its pattern sheet, or null
   */
  String read(RequestField root, PatternSheet sheet) {
    RequestField spot = root.at(FIELD);
    String name = spot.text();
    if (!spot.isWritten() && sheet != null) {
      spot = ofSheet(root.at("pattern"));
      name = sheet.family();
    }
    if (name == null) {
      return usual.id();
    }
    Optional<String> id = id(name);
    if (id.isEmpty()) {
      spot.impossible(problem(), near(name));
    }
    return id.orElse(usual.id());
  }

  /** Where a request says the family of its sheet. */
  private static RequestField ofSheet(RequestField pattern) {
    return pattern.at("inline").isWritten()
        ? pattern.at("inline").at(FIELD)
        : pattern.at(pattern.at("sheet").isWritten() ? "sheet" : PatternReader.SENT);
  }

  private Optional<String> id(String name) {
    return Family.named(name, families).map(Family::id);
  }

  private String problem() {
    return words.say("fault-family");
  }

  /** The family meant, also where one of the words for it was; else all there are. */
  private String near(String name) {
    List<String> all =
        families.values().stream()
            .flatMap(
                one -> Stream.concat(Stream.of(one.id()), one.called().stream().map(Catalog::idOf)))
            .toList();
    return NearestName.remedy(
        NearestName.to(name, all).flatMap(this::id).orElse(name), families.keySet());
  }

  private static Pattern pattern(List<String> words) {
    return Pattern.compile(
        words.stream()
            .map(word -> Pattern.quote(word).replaceAll("[ -]", "\\\\E[ -]{1,2}\\\\Q"))
            .collect(Collectors.joining("|", "(?<![\\p{L}\\d])(?:", ")(?![\\p{L}\\d])")),
        Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }
}
