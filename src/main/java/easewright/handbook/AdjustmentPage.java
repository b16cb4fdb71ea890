package easewright.handbook;

import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.List;

/**
 * An adjustment's page; the fields are the catalog's, blanks set apart.
 *
 * @param rules its page of rules, or null
 * @param limit the parameter with its largest amount, or null
 * @param heldBack reasons to hold it back, each with its situation
 * @param gives what takes its place, and when
 * @param takes whose place it takes, and when
 */
public record AdjustmentPage(
    AdjustmentEntry adjustment,
    List<TextRun> does,
    List<List<TextRun>> steps,
    List<PageLink> places,
    List<PageLink> alsoPlaces,
    List<PageLink> sideEffects,
    RulesPage.Number limit,
    PageLink beyond,
    String rules,
    List<Related> cures,
    List<Related> worsens,
    List<Related> heldBack,
    List<Related> gives,
    List<Related> takes) {}
