package easewright.rulebook;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What changes are made for: the signs of the causes that each cures, as any sentence of the book
 * says. A sign that a cause shows rarely or never does not count.
 */
public final class ChangeAims {
  private static final Pattern CURES =
      Pattern.compile("(?m)^\\s*\"([^\"]+)\" (?:fully|largely|partly) cures \"([^\"]+)\"\\s*$");
  private static final Pattern SHOWS =
      Pattern.compile(
          "(?m)^\\s*\"([^\"]+)\" (?:nearly always|usually|often|sometimes) shows as"
              + " \"([^\"]+)\"\\s*$");

  private final Map<String, Set<String>> signs = new HashMap<>();

  /** Reads them from a book that need not be compiled. */
  public ChangeAims(RuleBookSource book) {
    Map<String, Set<String>> shown = links(SHOWS, book);
    links(CURES, book)
        .forEach(
            (change, causes) ->
                causes.forEach(
                    cause ->
                        signs
                            .computeIfAbsent(change, any -> new HashSet<>())
                            .addAll(shown.getOrDefault(cause, Set.of()))));
  }

  private static Map<String, Set<String>> links(Pattern sentence, RuleBookSource book) {
    Map<String, Set<String>> links = new HashMap<>();
    for (RuleText rule : book.rules()) {
      Matcher found = sentence.matcher(rule.body());
      while (found.find()) {
        links
            .computeIfAbsent(Catalog.idOf(found.group(1)), any -> new HashSet<>())
            .add(Catalog.idOf(found.group(2)));
      }
    }
    return links;
  }

  /** Ids of the signs that a change may end; none where it cures nothing. */
  public Set<String> of(String change) {
    return signs.getOrDefault(change, Set.of());
  }
}
