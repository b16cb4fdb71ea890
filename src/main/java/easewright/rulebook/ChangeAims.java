package easewright.rulebook;

import easewright.rulebook.RuleStatement.Kind;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What changes are made for: the signs of the causes that each cures, as any sentence of the book
 * says. A sign that a cause shows rarely or never does not count.
 */
public final class ChangeAims {
  private static final Set<String> SELDOM = Set.of("rarely", "never");

  private final Map<String, Set<String>> signs = new HashMap<>();

  /** Reads them from a book that need not be compiled. */
  public ChangeAims(RuleBookSource book) {
    Map<String, Set<String>> shown =
        RuleStatement.of(Kind.SHOWS, book.rules())
            .filter(one -> !SELDOM.contains(one.word()))
            .collect(
                Collectors.groupingBy(
                    RuleStatement::subject,
                    Collectors.mapping(RuleStatement::object, Collectors.toSet())));
    RuleStatement.of(Kind.CURES, book.rules())
        .forEach(
            one ->
                signs
                    .computeIfAbsent(one.subject(), any -> new HashSet<>())
                    .addAll(shown.getOrDefault(one.object(), Set.of())));
  }

  /** Ids of the signs that a change may end; none where it cures nothing. */
  public Set<String> of(String change) {
    return signs.getOrDefault(change, Set.of());
  }
}
