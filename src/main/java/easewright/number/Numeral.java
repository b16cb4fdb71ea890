package easewright.number;

import java.text.Normalizer;

/**
 * A number as it stands in a text, in figures or in words.
 *
 * @param number whole, decimal, fraction or both: "34", "86.5", "1/2", "34 1/4"
 * @param end index after its last character
 * @param isFraction whether it is less than one, so that "of an inch" may follow
 * @param other the second number of "38/33", the two girths written as one; else null
 */
public record Numeral(String number, int end, boolean isFraction, String other) {

  /** Whether one character here is a fraction; Unicode spells ¼ as 1, fraction slash, 4. */
  public static boolean isSign(String text, int at) {
    return at < text.length()
        && Character.getType(text.charAt(at)) == Character.OTHER_NUMBER
        && sign(text, at).matches("[1-9]/[1-9]0?");
  }

  /** The fraction that one character here stands for. */
  public static String sign(String text, int at) {
    return Normalizer.normalize(text.substring(at, at + 1), Normalizer.Form.NFKC).replace('⁄', '/');
  }
}
