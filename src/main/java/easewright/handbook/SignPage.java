package easewright.handbook;

import easewright.rulebook.Catalog.SignEntry;
import java.util.List;

/**
 * A sign's page.
 *
 * @param shownBy causes that show as it
 * @param broughtBy adjustments that may bring it
 * @param cautions what is said about it for safety's sake
 */
public record SignPage(
    SignEntry sign,
    List<PageLink> places,
    List<Related> shownBy,
    List<PageLink> broughtBy,
    List<PageLink> cautions) {}
