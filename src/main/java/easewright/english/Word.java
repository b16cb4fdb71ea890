package easewright.english;

/**
 * One word of a text.
 *
 * @param from where it begins in the text, in characters
 * @param to where it ends, exclusive
 * @param plain in lower case, accents and possessive removed
 * @param stem without its ending, so that "gapes" and "gaping" are one
 */
public record Word(int from, int to, String plain, String stem) {}
