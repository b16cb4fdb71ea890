package easewright.handbook;

/**
 * A run of text within a sentence.
 *
 * @param text as shown
 * @param href the link target, or null
 * @param blank true for a blank that each fitting fills in
 */
public record TextRun(String text, String href, boolean blank) {}
