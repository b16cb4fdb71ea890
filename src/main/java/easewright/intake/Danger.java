package easewright.intake;

import easewright.intake.Reading.SignRead;
import easewright.number.TextSpan;
import java.util.List;

/**
 * A danger to health that a text tells of.
 *
 * @param sign id of the sign, a red flag
 * @param span the words it was known by
 * @param because what those words say, in words of the rule book
 * @param reader the name of the reader that found it
 * @param confidence from 0 to 1
 */
record Danger(String sign, TextSpan span, String because, String reader, double confidence) {
  /** Whether it was read as present. */
  boolean isIn(List<SignRead> read) {
    return read.stream().anyMatch(one -> one.isSo(sign));
  }
}
