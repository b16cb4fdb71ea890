package easewright.handbook;

import easewright.rulebook.Catalog.SignEntry;
import java.util.List;

/**
 * A sign's page.
 *
 * @param shownBy causes of this sign
 * @param broughtBy adjustments that may cause it
 * @param cautions safety cautions about it
 * @param drawn whether there is a drawing of it
 */
public record SignPage(
    SignEntry sign,
    List<PageLink> places,
    List<Related> shownBy,
    List<PageLink> broughtBy,
    List<PageLink> cautions,
    boolean drawn) {}
