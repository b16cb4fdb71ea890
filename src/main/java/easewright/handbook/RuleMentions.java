package easewright.handbook;

import easewright.rulebook.Catalog;
import easewright.rulebook.RuleText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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
  private static final String NAME = "\"([^\"]+)\"";

  /** The kinds of sentence that link two names. */
  enum Kind {
    SHOWS(NAME + " (nearly always|usually|often|sometimes|rarely|never) shows as " + NAME),
    CURES(NAME + " (fully|largely|partly) cures " + NAME),
    WORSENS(NAME + "( )worsens " + NAME),
    HOLDS_BACK("hold back " + NAME + "( )because " + NAME),
    REPLACES("put " + NAME + "( )in place of " + NAME);

    private final Pattern sentence;

    Kind(String sentence) {
      this.sentence = Pattern.compile("^\\s*" + sentence + "\\s*$", Pattern.MULTILINE);
    }
  }

  /** One sentence: subject, how much or how often, object, and the rule that says it. */
  record Statement(Kind kind, String subject, String word, String object, RuleText rule) {
    String situation() {
      return rule.name().split(":", 2)[1].strip();
    }
  }

  private final List<Statement> all = new ArrayList<>();

  RuleMentions(List<RuleText> rules) {
    for (RuleText rule : rules) {
      for (Kind kind : Kind.values()) {
        Matcher found = kind.sentence.matcher(rule.body());
        while (found.find()) {
          all.add(
              new Statement(
                  kind,
                  Catalog.idOf(found.group(1)),
                  found.group(2).strip(),
                  Catalog.idOf(found.group(3)),
                  rule));
        }
      }
    }
  }

  List<Statement> of(Kind kind, Predicate<Statement> which) {
    return all.stream().filter(statement -> statement.kind() == kind).filter(which).toList();
  }

  /** Statements about one subject, by object, the strongest word first. */
  List<Related> of(Kind kind, String subject, Links links) {
    return related(
        of(kind, statement -> statement.subject().equals(subject)), Statement::object, links);
  }

  /** Statements about one object, by subject, the strongest word first. */
  List<Related> about(Kind kind, String object, Links links) {
    return related(
        of(kind, statement -> statement.object().equals(object)), Statement::subject, links);
  }

  private static List<Related> related(
      List<Statement> statements, Function<Statement, String> other, Links links) {
    Map<String, String> inAny = new LinkedHashMap<>();
    Map<String, List<Related.Special>> special = new LinkedHashMap<>();
    for (Statement statement : statements) {
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
