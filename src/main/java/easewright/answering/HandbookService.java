package easewright.answering;

import easewright.handbook.GarmentDrawing;
import easewright.handbook.Handbook;
import easewright.request.IntakeAnswer;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RulePage;
import easewright.saying.Garments;
import easewright.saying.RulePageNote;
import easewright.saying.RulePageNote.RuleEntry;
import jakarta.inject.Singleton;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The active rule book, for reading and searching. */
@Singleton
public class HandbookService implements Garments {
  private final RuleBookService rules;
  private final FittingService fittings;
  private volatile Handbook handbook;

  HandbookService(RuleBookService rules, FittingService fittings) {
    this.rules = rules;
    this.fittings = fittings;
  }

  /**
   * Signs meant by a question in everyday words.
   *
   * @param surely ids of signs it names
   * @param perhaps ids of signs it may name
   */
  public record Meant(List<String> surely, List<String> perhaps) {
    /** No signs. */
    public static final Meant NOTHING = new Meant(List.of(), List.of());
  }

  /** The handbook of the active edition, built once per edition. */
  public Handbook handbook() {
    RuleBookSource source = rules.edition().book().whole();
    Handbook current = handbook;
    if (current == null || current.source() != source) {
      current = new Handbook(source);
      handbook = current;
    }
    return current;
  }

  @Override
  public Optional<GarmentDrawing> garment(String family) {
    return handbook().garment(family);
  }

  /** The families with a drawing that must be named to be asked: name by id. */
  public Map<String, String> others() {
    Map<String, String> others = new LinkedHashMap<>();
    handbook().source().families().values().stream()
        .filter(family -> !family.usual() && family.outline().drawn())
        .forEach(family -> others.put(family.id(), family.name()));
    return others;
  }

  /** The id itself if it is one of {@link #others}; "" for any other. */
  public String other(String family) {
    return others().containsKey(family) ? family : "";
  }

  /** Reads a question like a post: "creeps up" finds the band that rides up. */
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

  /** All pages for a list, by topic and title. */
  public List<RuleEntry> pages() {
    return rules.edition().book().whole().pages().values().stream()
        .sorted(Comparator.comparing(RulePage::topic).thenComparing(RulePage::title))
        .map(RuleEntry::of)
        .toList();
  }

  /** A page with its rules; empty if the rule book has no such page. */
  public Optional<RulePageNote> page(String id) {
    RuleBookSource source = rules.edition().book().whole();
    return Optional.ofNullable(source.pages().get(id))
        .map(page -> RulePageNote.of(page, source.rules()));
  }

  /** State of the active book relative to its folder. */
  public RuleFolder.State state() {
    return rules.state();
  }
}
