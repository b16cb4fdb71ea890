package easewright.rulebook;

import easewright.deadline.Deadline;
import easewright.rulebook.facts.AnyFitting;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.drools.model.Model;
import org.drools.model.Rule;
import org.drools.modelcompiler.KieBaseBuilder;
import org.kie.api.KieBase;
import org.kie.api.KieServices;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.KieSessionConfiguration;
import org.kie.api.runtime.conf.ThreadSafeOption;

/**
 * The rule book of one family of garments, ready to be consulted. Immutable and safe to share
 * between threads; each consultation has a session of its own.
 */
public final class RuleBook {
  /** More firings than any legal fitting can cause; reaching it means a rule loops. */
  private static final int MOST_FIRINGS = 5_000;

  /** How many firings may pass before the clock is looked at. */
  private static final int FIRINGS_AT_ONCE = 500;

  private final RuleBookSource source;
  private final RuleBookSource whole;
  private final Set<String> foreign;
  private final Map<String, RuleBook> families;
  private final KieBase base;
  private final KieSessionConfiguration ofOneThread = ofOneThread();
  private final Map<String, RuleText> rulesByKey;
  private final Function<Map<String, RuleText>, Conclusions> conclusions;
  private final Conclusions always;
  private final Effort effort;

  private RuleBook(
      RuleBookSource source,
      RuleBookSource whole,
      KieBase base,
      Map<String, RuleText> rulesByKey,
      Effort effort,
      Map<String, RuleBook> families,
      Function<Map<String, RuleText>, Conclusions> conclusions) {
    this.source = source;
    this.whole = whole;
    this.foreign = FamilyView.foreign(whole, whole.families().get(source.family()));
    this.effort = effort;
    this.families = families;
    this.base = base;
    this.rulesByKey = rulesByKey;
    this.conclusions = conclusions;
    try (Consultation consultation = open()) {
      this.always = consultation.hear(List.of(new AnyFitting()));
    }
  }

  /**
   * The book of each family of garments has an engine of its own, so that a fitting does not pay
   * for the rules of others.
   */
  private static RuleBook of(RuleBookSource whole, Model model) {
    Map<String, RuleText> texts =
        whole.rules().stream().collect(Collectors.toMap(RuleText::key, Function.identity()));
    Effort effort = new Effort();
    Map<String, RuleBook> families = new TreeMap<>();
    for (Family family : whole.families().values()) {
      List<Rule> rules =
          model.getRules().stream()
              .filter(rule -> family.hears(texts.get(rule.getName()).folder()))
              .toList();
      KieBase base = KieBaseBuilder.createKieBaseFromModel(new FamilyModel(model, rules));
      families.put(
          family.id(),
          new RuleBook(whole.in(family), whole, base, texts, effort, families, Conclusions::new));
    }
    return families.get(Family.usual(whole.families()).id());
  }

  /**
   * The same rules with another receiver for what they say, so that a test can leave out a sentence
   * without compiling anything.
   */
  RuleBook heardBy(Function<Map<String, RuleText>, Conclusions> others) {
    Map<String, RuleBook> all = new TreeMap<>();
    families.forEach(
        (family, one) ->
            all.put(
                family,
                new RuleBook(one.source, whole, one.base, one.rulesByKey, effort, all, others)));
    return all.get(source.family());
  }

  /** The book compiled into the application. */
  public static RuleBook compiledIn() {
    return of(RuleModels.sourceCompiledIn(), RuleModels.compiledIn());
  }

  /**
   * Compiles the book in a folder. Only rule files that differ from those compiled into the
   * application are compiled, so that trying a change takes a second or two; a file differs too
   * where a parameter or a sentence it uses does.
   *
   * @throws RuleBookFault if the folder holds no sound book
   */
  public static RuleBook compile(Path folder) {
    return of(RuleBookSource.read(folder));
  }

  /** The same for a book already read. */
  public static RuleBook of(RuleBookSource source) {
    return of(source, RuleModels.of(source));
  }

  /** What this family has of the book. */
  public RuleBookSource source() {
    return source;
  }

  /** The book of all families. */
  public RuleBookSource whole() {
    return whole;
  }

  public Catalog catalog() {
    return source.catalog();
  }

  /** The books by the family they judge, this one among them; they share an effort. */
  public Map<String, RuleBook> families() {
    return Collections.unmodifiableMap(families);
  }

  /** What the rules say in any fitting. */
  public Conclusions always() {
    return always;
  }

  /** What all consultations so far have cost. */
  public Effort effort() {
    return effort;
  }

  /** Opens a consultation; close it, or its session leaks. */
  public Consultation open() {
    return new Consultation(
        base.newKieSession(ofOneThread, null),
        conclusions.apply(rulesByKey).without(foreign),
        effort);
  }

  /** A consultation stays with its thread, so its session need not lock: a fifth of its time. */
  private static KieSessionConfiguration ofOneThread() {
    KieSessionConfiguration configuration = KieServices.get().newKieSessionConfiguration();
    configuration.setOption(ThreadSafeOption.NO);
    return configuration;
  }

  /** Number of sessions not yet closed. */
  public int openSessions() {
    return families.values().stream().mapToInt(one -> one.base.getKieSessions().size()).sum();
  }

  /** One fitting put before the rules, in one step or several. */
  public static final class Consultation implements AutoCloseable {
    private final KieSession session;
    private final Conclusions statements;
    private final Effort effort;
    private int firings;
    private long nanos;

    private Consultation(KieSession session, Conclusions statements, Effort effort) {
      this.session = session;
      this.statements = statements;
      this.effort = effort;
      session.setGlobal("book", statements);
    }

    /** Adds facts and returns all that the rules have said so far. */
    public Conclusions hear(Collection<?> facts) {
      long began = System.nanoTime();
      try {
        facts.forEach(session::insert);
        comeToRest();
        return statements;
      } finally {
        nanos += System.nanoTime() - began;
      }
    }

    private void comeToRest() {
      Deadline.check();
      for (int now = 0; now < MOST_FIRINGS; now += FIRINGS_AT_ONCE) {
        int fired = session.fireAllRules(FIRINGS_AT_ONCE);
        firings += fired;
        Deadline.check();
        if (fired < FIRINGS_AT_ONCE) {
          return;
        }
      }
      throw new RuleBookFault("The rules did not come to rest.");
    }

    @Override
    public void close() {
      effort.add(firings, nanos);
      session.dispose();
    }
  }
}
