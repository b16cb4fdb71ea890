package easewright.saying;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import java.util.Locale;

/** Formats numbers and texts for templates. */
@TemplateExtension
final class TemplateText {
  private TemplateText() {}

  /**
   * A fraction as a whole percentage: 0.734 is "73 %"; a rare but possible value is never "0 %".
   */
  static String percent(double fraction) {
    long percent = Math.round(fraction * 100);
    if (percent == 0 && fraction > 0) {
      return "under 1 %";
    }
    return percent == 100 && fraction < 1 ? "over 99 %" : percent + " %";
  }

  /** With one decimal and its sign: "+3.2", "-1.0". */
  static String signed(double number) {
    return String.format(Locale.ROOT, "%+.1f", number);
  }

  /** With one decimal: "3.2". */
  static String oneDecimal(double number) {
    return String.format(Locale.ROOT, "%.1f", number);
  }

  /** With two decimals: "1.23". */
  static String twoDecimals(double number) {
    return String.format(Locale.ROOT, "%.2f", number);
  }

  /** A difference of percentages, with its sign: 0.034 is "+3.4 points". */
  static String points(double fraction) {
    return String.format(Locale.ROOT, "%+.1f points", fraction * 100 + 0.0);
  }

  /** With a capital first letter, to begin a sentence. */
  static String begin(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** The words between the spaces of a text. */
  static List<String> eachWord(String text) {
    return List.of(text.split(" "));
  }

  /** A kebab-case name in words: "band-length-excess" is "band length excess". */
  static String words(String id) {
    return id.replace('-', ' ');
  }
}
