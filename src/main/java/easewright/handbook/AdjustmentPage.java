package easewright.handbook;

import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.List;

/**
 * An adjustment's page, with the catalog's fields split at blanks.
 *
 * @param rules its rules page, or null
 * @param limit the parameter with its largest amount, or null
 * @param heldBack reasons to hold it back, each with its situation
 * @param gives what replaces it, and when
 * @param takes what it replaces, and when
 * @param drawn whether there is a drawing of it
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
    List<Related> takes,
    boolean drawn) {}
