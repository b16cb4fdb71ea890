package easewright.handbook;

/**
 * A run of text within a sentence.
 *
 * @param text as shown
 * @param href where it leads, or null
 * @param blank true for a blank which each fitting fills in
 */
public record TextRun(String text, String href, boolean blank) {}
