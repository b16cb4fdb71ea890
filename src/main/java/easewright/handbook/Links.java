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

/** Where every name of the rule book has its page. */
final class Links {
  private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"");
  private static final Pattern BLANK = Pattern.compile("\\{([a-z]+)}");

  private final RuleBookSource source;

  Links(RuleBookSource source) {
    this.source = source;
  }

  /** The link of an id; without an address when nothing is known by it. */
  PageLink of(String id) {
    Catalog catalog = source.catalog();
    return new PageLink(catalog.nameOf(id), address(id));
  }

  List<PageLink> of(List<String> ids) {
    return ids == null ? List.of() : ids.stream().map(this::of).toList();
  }

  /** The section of the index on a place of the garment. */
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

  /** A rule's line with every name in it linked; a parameter leads to its line further down. */
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

  /** A sentence of the catalog with its blanks set apart. */
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
