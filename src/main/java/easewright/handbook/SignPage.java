package easewright.handbook;

import easewright.rulebook.Catalog.SignEntry;
import java.util.List;

/** A sign's page. */
public record SignPage(
    SignEntry sign, List<Link> places, List<Related> shownBy, List<Link> broughtBy) {}
