package easewright.rulebook;

import easewright.rulebook.facts.Figure;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.drools.drl.ast.descr.AndDescr;
import org.drools.drl.ast.descr.AtomicExprDescr;
import org.drools.drl.ast.descr.BaseDescr;
import org.drools.drl.ast.descr.ConnectiveType;
import org.drools.drl.ast.descr.ConstraintConnectiveDescr;
import org.drools.drl.ast.descr.ExistsDescr;
import org.drools.drl.ast.descr.ExprConstraintDescr;
import org.drools.drl.ast.descr.NotDescr;
import org.drools.drl.ast.descr.OrDescr;
import org.drools.drl.ast.descr.PackageDescr;
import org.drools.drl.ast.descr.PatternDescr;
import org.drools.drl.ast.descr.RelationalExprDescr;
import org.drools.drl.ast.descr.RuleDescr;
import org.drools.drl.parser.DrlExprParser;
import org.drools.drl.parser.DrlExprParserFactory;
import org.drools.drl.parser.DrlParser;
import org.drools.drl.parser.DroolsParserException;
import org.kie.internal.builder.conf.LanguageLevelOption;

/**
 * Extracts the numbers that conditions compare. The engine's own parser reads them, so nothing is
 * compared that is not found here; a comparison that cannot be read for certain is refused, since
 * an answer would trust it too far and show no limit.
 */
final class ComparisonReader {
  private static final String FIGURE = Figure.class.getSimpleName();
  private static final Pattern TEXT = Pattern.compile("\"([^\"]*)\"");
  private static final Map<String, String> HOW =
      Map.of("<", "below", ">", "above", ">=", "at least", "<=", "at most");
  private static final Map<String, String> TURNED =
      Map.of("<", ">", ">", "<", ">=", "<=", "<=", ">=");

  private final List<Compared> compared = new ArrayList<>();

  private ComparisonReader() {}

  /**
   * A figure compared with a number.
   *
   * @param how "below", "above", "at least" or "at most"
   * @param limit the number as written: {@code parameter("…")} or digits
   */
  record Compared(String figure, String how, String limit) {}

  /** A condition whose comparisons cannot be read for certain. */
  static final class Unclear extends Exception {
    private static final long serialVersionUID = 1L;

    private Unclear(String why) {
      super(why);
    }

    /** What is wrong with it, as the end of a sentence that quotes the rule writer. */
    String why() {
      return getMessage();
    }
  }

  /** The comparisons of one condition, in the order they are written. */
  static List<Compared> of(String condition) throws Unclear {
    PackageDescr parsed = parsed("rule \"condition\"\nwhen\n" + condition + "\nthen\nend\n");
    return parsed.getRules().size() == 1 ? of(parsed.getRules().get(0)) : List.of();
  }

  /** The comparisons of each rule of a file as the engine compiles it, by the rule's key. */
  static Map<String, List<Compared>> ofRules(String drl) throws Unclear {
    Map<String, List<Compared>> rules = new LinkedHashMap<>();
    for (RuleDescr rule : parsed(drl).getRules()) {
      rules.put(rule.getName(), of(rule));
    }
    return rules;
  }

  private static PackageDescr parsed(String drl) throws Unclear {
    try {
      DrlParser parser = new DrlParser();
      PackageDescr parsed = parser.parse(false, drl);
      if (parsed == null || parser.hasErrors()) {
        throw new Unclear("the engine cannot read it: " + parser.getErrors());
      }
      return parsed;
    } catch (DroolsParserException e) {
      throw new Unclear("the engine cannot read it: " + e.getMessage());
    }
  }

  private static List<Compared> of(RuleDescr rule) throws Unclear {
    ComparisonReader reader = new ComparisonReader();
    reader.condition(rule.getLhs(), true);
    return reader.compared;
  }

  /**
   * @param always whether the rule speaks only if this condition is met as it stands; else its fact
   *     may be missing from what the rule was judged by
   */
  private void condition(BaseDescr condition, boolean always) throws Unclear {
    if (condition instanceof AndDescr all) {
      each(all.getDescrs(), always);
    } else if (condition instanceof OrDescr any) {
      each(any.getDescrs(), false);
    } else if (condition instanceof NotDescr not) {
      each(not.getDescrs(), false);
    } else if (condition instanceof ExistsDescr some) {
      each(some.getDescrs(), false);
    } else if (condition instanceof PatternDescr fact && fact.getSource() == null) {
      if (fact.getObjectType().endsWith(FIGURE)) {
        figure(fact, always);
      }
    } else {
      throw new Unclear("it is not a fact that must be there, or must not");
    }
  }

  private void each(List<? extends BaseDescr> conditions, boolean always) throws Unclear {
    for (BaseDescr one : conditions) {
      condition(one, always);
    }
  }

  private void figure(PatternDescr fact, boolean always) throws Unclear {
    if (fact.getIdentifier() != null) {
      throw new Unclear("it keeps a figure for later");
    }
    List<RelationalExprDescr> relations = new ArrayList<>();
    for (BaseDescr constraint : fact.getConstraint().getDescrs()) {
      if (!(constraint instanceof ExprConstraintDescr written)) {
        throw new Unclear("it asks for something else than relations");
      }
      DrlExprParser parser = DrlExprParserFactory.getDrlExprParser(language());
      ConstraintConnectiveDescr all = parser.parse(written.getExpression());
      if (all == null || parser.hasErrors()) {
        throw new Unclear("the engine cannot read \"" + written.getExpression() + "\"");
      }
      relations(all, written.getExpression(), relations);
    }
    figure(relations, always);
  }

  private static LanguageLevelOption language() {
    return DrlParser.DEFAULT_LANGUAGE_LEVEL;
  }

  /** Only relations that must all hold. */
  private static void relations(
      ConstraintConnectiveDescr all, String written, List<RelationalExprDescr> relations)
      throws Unclear {
    if (all.getConnective() != ConnectiveType.AND || all.isNegated()) {
      throw new Unclear("\"" + written + "\" may hold in more ways than one");
    }
    for (BaseDescr one : all.getDescrs()) {
      if (one instanceof ConstraintConnectiveDescr inner) {
        relations(inner, written, relations);
      } else if (one instanceof RelationalExprDescr relation && !relation.isNegated()) {
        relations.add(relation);
      } else {
        throw new Unclear("\"" + written + "\" is no plain relation");
      }
    }
  }

  private void figure(List<RelationalExprDescr> relations, boolean always) throws Unclear {
    String id = null;
    for (RelationalExprDescr relation : relations) {
      if (text(relation.getLeft()).equals("id")) {
        var name = TEXT.matcher(text(relation.getRight()));
        if (id != null || !relation.getOperator().equals("==") || !name.matches()) {
          throw new Unclear("it does not say which one figure it looks at");
        }
        id = name.group(1);
      }
    }
    if (id == null) {
      throw new Unclear("it does not say which one figure it looks at");
    }
    for (RelationalExprDescr relation : relations) {
      if (!text(relation.getLeft()).equals("id")) {
        if (!always) {
          throw new Unclear("a figure is compared where it need not be so for the rule to speak");
        }
        compared.add(compared(id, relation));
      }
    }
  }

  private static Compared compared(String figure, RelationalExprDescr relation) throws Unclear {
    String left = text(relation.getLeft());
    String right = text(relation.getRight());
    String operator = relation.getOperator();
    if (HOW.containsKey(operator)) {
      if (left.equals("value")) {
        return new Compared(figure, HOW.get(operator), right);
      }
      if (right.equals("value")) {
        return new Compared(figure, HOW.get(TURNED.get(operator)), left);
      }
    }
    throw new Unclear("\"" + left + " " + operator + " " + right + "\" compares no value");
  }

  private static String text(BaseDescr side) throws Unclear {
    if (side instanceof AtomicExprDescr atom) {
      return atom.getExpression().strip();
    }
    throw new Unclear("\"" + side + "\" is worked out within the comparison");
  }
}
