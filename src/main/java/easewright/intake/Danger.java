package easewright.intake;

import easewright.number.TextSpan;

/**
 * A danger to health that a text tells of.
 *
 * @param sign id of the sign, a red flag
 * @param span the words it was known by
 * @param because what those words say, in words of the rule book
 * @param reader the name of the reader that found it
 * @param confidence from 0 to 1
 */
record Danger(String sign, TextSpan span, String because, String reader, double confidence) {}
