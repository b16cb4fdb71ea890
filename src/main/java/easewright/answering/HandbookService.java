package easewright.answering;

import easewright.handbook.Handbook;
import easewright.request.IntakeAnswer;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RulePage;
import easewright.saying.RulePageNote;
import easewright.saying.RulePageNote.RuleEntry;
import jakarta.inject.Singleton;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The rule book in force, to read and to search. */
@Singleton
public class HandbookService {
  private final RuleBookService rules;
  private final FittingService fittings;
  private volatile Handbook handbook;

  HandbookService(RuleBookService rules, FittingService fittings) {
    this.rules = rules;
    this.fittings = fittings;
  }

  /**
   * Signs that a question in everyday words means.
   *
   * @param surely ids of signs it names
   * @param perhaps ids of signs it may name
   */
  public record Meant(List<String> surely, List<String> perhaps) {
    /** What no question means. */
    public static final Meant NOTHING = new Meant(List.of(), List.of());
  }

  /** The handbook of the edition in force, arranged once for each edition. */
  public Handbook handbook() {
    RuleBookSource source = rules.edition().book().source();
    Handbook current = handbook;
    if (current == null || current.source() != source) {
      current = new Handbook(source);
      handbook = current;
    }
    return current;
  }

  /** Reads a question as a post is read: "creeps up" finds the band that rides up. */
  public Meant meant(String asked) {
    IntakeAnswer read = fittings.readText(asked);
    List<String> surely = read.fitting().path("signs").findValuesAsText("sign");
    return new Meant(
        surely,
        read.notUnderstood().stream()
            .flatMap(one -> one.perhaps().stream())
            .map(IntakeAnswer.PerhapsNote::sign)
            .filter(sign -> !surely.contains(sign))
            .toList());
  }

  /** Every page in a line, by topic and title. */
  public List<RuleEntry> pages() {
    return rules.edition().book().source().pages().values().stream()
        .sorted(Comparator.comparing(RulePage::topic).thenComparing(RulePage::title))
        .map(RuleEntry::of)
        .toList();
  }

  /** A page with its rules; nothing where the rule book has no such page. */
  public Optional<RulePageNote> page(String id) {
    RuleBookSource source = rules.edition().book().source();
    return Optional.ofNullable(source.pages().get(id))
        .map(page -> RulePageNote.of(page, source.rules()));
  }

  /** How the rule book in force stands to the folder it is read from. */
  public RuleFolder.State state() {
    return rules.state();
  }
}
