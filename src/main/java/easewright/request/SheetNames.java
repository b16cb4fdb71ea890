package easewright.request;

import easewright.number.TextSpan;
import easewright.pattern.PatternSheet;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the pattern sheet that a text names: "Quillmere top 75B". */
final class SheetNames {
  private SheetNames() {}

  /** A sheet named, and where. */
  record Named(String id, TextSpan span) {}

  /** The one sheet that a text names; empty if it names none or several. */
  static Optional<Named> in(String text, List<PatternSheet> sheets) {
    List<Named> named =
        sheets.stream().flatMap(sheet -> in(text, sheet).stream()).limit(2).toList();
    return named.size() == 1 ? Optional.of(named.get(0)) : Optional.empty();
  }

  private static Optional<Named> in(String text, PatternSheet sheet) {
    String name = Pattern.quote(sheet.name()).replace(" ", "\\E[ -]{1,2}\\Q");
    Matcher matcher =
        Pattern.compile(
                "(?<![\\p{L}\\d])" + name + "(?![\\p{L}\\d])",
                Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)
            .matcher(text);
    return matcher.find()
        ? Optional.of(new Named(sheet.id(), new TextSpan(matcher.start(), matcher.end())))
        : Optional.empty();
  }
}
