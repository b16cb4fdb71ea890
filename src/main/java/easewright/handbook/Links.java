package easewright.handbook;

import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.Entry;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Links to the pages of the rule book's names. */
final class Links {
  private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"");
  private static final Pattern BLANK = Pattern.compile("\\{([a-z]+)}");

  private final RuleBookSource source;

  Links(RuleBookSource source) {
    this.source = source;
  }

  /** The link for an id; without an address if the id is unknown. */
  PageLink of(String id) {
    Catalog catalog = source.catalog();
    return new PageLink(catalog.nameOf(id), address(id));
  }

  List<PageLink> of(List<String> ids) {
    return ids == null ? List.of() : ids.stream().map(this::of).toList();
  }

  /** The link to the index section for a place on the garment. */
  static PageLink place(String place) {
    return new PageLink(place.replace('-', ' '), "/rules#at-" + place);
  }

  static List<PageLink> places(List<String> places) {
    return places == null ? List.of() : places.stream().map(Links::place).toList();
  }

  private String address(String id) {
    Catalog catalog = source.catalog();
    if (catalog.signs().containsKey(id)) {
      return "/rules/signs/" + id;
    }
    if (catalog.adjustments().containsKey(id)) {
      return "/rules/adjustments/" + id;
    }
    for (Map<String, ? extends Entry> part :
        List.of(catalog.causes(), catalog.findings(), catalog.cautions())) {
      if (part.containsKey(id) && source.pages().containsKey(id)) {
        return "/rules/" + id;
      }
    }
    return null;
  }

  /** A rule's line with all names linked; a parameter links to its line further down. */
  List<TextRun> sentence(String line) {
    return pieces(
        line,
        QUOTED,
        name -> {
          String id = Catalog.idOf(name);
          String href = source.parameters().containsKey(id) ? "#number-" + id : address(id);
          return new TextRun("\"" + name + "\"", href, false);
        });
  }

  /** A sentence of the catalog, split at its blanks. */
  static List<TextRun> blanks(String sentence) {
    return pieces(sentence, BLANK, blank -> new TextRun(blank, null, true));
  }

  private static List<TextRun> pieces(
      String text, Pattern pattern, Function<String, TextRun> made) {
    List<TextRun> pieces = new ArrayList<>();
    Matcher found = pattern.matcher(text);
    int at = 0;
    while (found.find()) {
      if (found.start() > at) {
        pieces.add(new TextRun(text.substring(at, found.start()), null, false));
      }
      pieces.add(made.apply(found.group(1)));
      at = found.end();
    }
    if (at < text.length()) {
      pieces.add(new TextRun(text.substring(at), null, false));
    }
    return pieces;
  }
}
