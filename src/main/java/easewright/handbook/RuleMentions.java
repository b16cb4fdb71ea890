package easewright.handbook;

import easewright.rulebook.RuleStatement;
import easewright.rulebook.RuleStatement.Kind;
import easewright.rulebook.RuleText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * What the rules say about the relation between two names, in any fitting and in each special
 * situation. Extracted from the rules' sentences, since a run without a special situation does not
 * show what it would say.
 */
final class RuleMentions {
  /** Strongest first, in display order. */
  private static final List<String> WORDS =
      List.of(
          "nearly always",
          "usually",
          "often",
          "sometimes",
          "rarely",
          "never",
          "fully",
          "largely",
          "partly",
          "");

  private static final String ANY = "in any fitting";

  private final List<RuleStatement> all;

  RuleMentions(List<RuleText> rules) {
    all = Arrays.stream(Kind.values()).flatMap(kind -> RuleStatement.of(kind, rules)).toList();
  }

  List<RuleStatement> of(Kind kind, Predicate<RuleStatement> which) {
    return all.stream().filter(statement -> statement.kind() == kind).filter(which).toList();
  }

  /** Statements about one subject, by object, the strongest word first. */
  List<Related> of(Kind kind, String subject, Links links) {
    return related(
        of(kind, statement -> statement.subject().equals(subject)), RuleStatement::object, links);
  }

  /** Statements about one object, by subject, the strongest word first. */
  List<Related> about(Kind kind, String object, Links links) {
    return related(
        of(kind, statement -> statement.object().equals(object)), RuleStatement::subject, links);
  }

  private static List<Related> related(
      List<RuleStatement> statements, Function<RuleStatement, String> other, Links links) {
    Map<String, String> inAny = new LinkedHashMap<>();
    Map<String, List<Related.Special>> special = new LinkedHashMap<>();
    for (RuleStatement statement : statements) {
      List<Related.Special> list =
          special.computeIfAbsent(other.apply(statement), id -> new ArrayList<>());
      if (statement.situation().equals(ANY)) {
        inAny.put(other.apply(statement), statement.word());
      } else {
        list.add(
            new Related.Special(
                statement.word(), statement.situation(), statement.rule().summary()));
      }
    }
    return special.entrySet().stream()
        .map(one -> new Related(links.of(one.getKey()), inAny.get(one.getKey()), one.getValue()))
        .sorted(Comparator.comparingInt(RuleMentions::rank))
        .toList();
  }

  private static int rank(Related related) {
    return related.word() == null ? WORDS.size() : WORDS.indexOf(related.word());
  }
}
