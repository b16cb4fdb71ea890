package easewright.intake;

import easewright.intake.Reading.ClothRead;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** Finds stretch tests: "10 cm stretches to 16 and comes back to 10.5", "50 % stretch". */
final class ClothTests {
  private static final Pattern STRETCHED =
      Pattern.compile(
          "(?is).*\\b(?:stretch\\w*|pull\\w*|goes|went|reach\\w*|extend\\w*|gets?|got|becomes?)\\b.*\\bto\\b.*"
              + "|(?is).*\\bto\\b.*|.*→.*|.*->.*");
  private static final Pattern TALK =
      Pattern.compile("(?is).*\\b(?:stretch|pull|extend|elonga)\\w*.*");
  private static final Pattern RELAXED =
      Pattern.compile(
          "(?is).*\\b(?:back|return\\w*|relax\\w*|recover\\w*|settl\\w*|rest\\w*|shr[aiu]nk|spr[aiu]ng|ends? up|stay\\w*|down to|let go)\\b.*");
  private static final Pattern ALONG =
      Pattern.compile(
          "(?is).*\\b(?:lengthwise|lengthways|vertical\\w*|up and down|along the grain|selvedge|selvage|downwards?)\\b.*");
  private static final int FARTHEST = 90;

  private ClothTests() {}

  static List<ClothRead> in(Post post, List<Amount> amounts) {
    List<ClothRead> found = new ArrayList<>();
    for (int i = 0; i + 1 < amounts.size(); i++) {
      ClothRead one = test(post, amounts, i);
      if (one != null
          && found.stream()
              .noneMatch(
                  other ->
                      other.role().equals(one.role())
                          && other.direction().equals(one.direction()))) {
        found.add(one);
      }
    }
    return found;
  }

  private static ClothRead test(Post post, List<Amount> amounts, int i) {
    Amount marked = amounts.get(i);
    Amount stretched = amounts.get(i + 1);
    String unit = marked.unit() != null ? marked.unit() : stretched.unit();
    if (unit == null || unit.equals("%") || "%".equals(stretched.unit())) {
      return null;
    }
    String text = post.text();
    int gap = stretched.span().from() - marked.span().to();
    if (gap < 0 || gap > FARTHEST) {
      return null;
    }
    String between = text.substring(marked.span().to(), stretched.span().from());
    String around =
        text.substring(
            Math.max(0, marked.span().from() - 60),
            Math.min(text.length(), stretched.span().to() + 60));
    double ratio = mm(stretched, unit) / mm(marked, unit);
    if (!(ratio > 1.04 && ratio < 3.6)
        || !STRETCHED.matcher(between).matches()
        || !TALK.matcher(around).matches()) {
      return null;
    }
    Map<String, String> lengths = new LinkedHashMap<>();
    lengths.put("marked", marked.text(unit));
    lengths.put("stretched", stretched.text(unit));
    Span span = marked.span().with(stretched.span());
    if (i + 2 < amounts.size()) {
      Amount relaxed = amounts.get(i + 2);
      int next = relaxed.span().from() - stretched.span().to();
      if (next >= 0
          && next <= FARTHEST
          && RELAXED.matcher(text.substring(stretched.span().to(), relaxed.span().from())).matches()
          && mm(relaxed, unit) >= 0.95 * mm(marked, unit)
          && mm(relaxed, unit) <= mm(stretched, unit)) {
        lengths.put("relaxed", relaxed.text(unit));
        span = span.with(relaxed.span());
      }
    }
    if (lengths.size() == 2
        && text.substring(span.to(), Math.min(text.length(), span.to() + 70))
            .matches(
                "(?is)[^0-9]{0,40}(?:right |straight |all the way )?back (?:to where|exactly|to the start|to the mark|fully|completely|perfectly).*")) {
      lengths.put("relaxed", marked.text(unit));
    }
    String near = sentenceAround(text, span);
    String role =
        near.matches("(?is).*\\b(?:lining|power ?mesh|mesh|power ?net|inner layer)\\b.*")
            ? near.matches("(?is).*\\blining\\b.*") ? "lining" : "support"
            : "main";
    return new ClothRead(
        role, ALONG.matcher(near).matches() ? "along" : "around", lengths, span, 0.9);
  }

  private static String sentenceAround(String text, Span span) {
    int from =
        Math.max(text.lastIndexOf('.', span.from()), text.lastIndexOf('\n', span.from())) + 1;
    int to = text.indexOf('.', span.to());
    return text.substring(from, to < 0 ? text.length() : to);
  }

  private static double mm(Amount amount, String unit) {
    return amount.quantity(unit).map(one -> one.length().mm()).orElse(Double.NaN);
  }
}
