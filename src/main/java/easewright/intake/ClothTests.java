package easewright.intake;

import easewright.intake.Reading.ClothRead;
import easewright.number.Amount;
import easewright.number.ClothTestWords;
import easewright.number.TextSpan;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Finds stretch tests: "10 cm stretches to 16 and comes back to 10.5". */
final class ClothTests {
  /** Farther apart, two amounts are no two ends of one test; in characters. */
  private static final int FARTHEST = 90;

  private static final int AROUND = 60;

  /** As far as "and back to where it was" is looked for, in characters. */
  private static final int BACK_REACH = 70;

  private static final int LONGEST_CLAUSE = 200;

  private final ClothTestWords words;
  private final Post post;
  private final List<Amount> amounts;
  private final List<ClothRead> found = new ArrayList<>();
  private Amount marked;

  private ClothTests(ClothTestWords words, Post post, List<Amount> amounts) {
    this.words = words;
    this.post = post;
    this.amounts = amounts;
  }

  static List<ClothRead> in(Post post, List<Amount> amounts, ClothTestWords words) {
    ClothTests tests = new ClothTests(words, post, amounts);
    tests.read();
    return tests.found;
  }

  private void read() {
    int i = 0;
    while (i < amounts.size()) {
      Amount one = amounts.get(i);
      Amount next = i + 1 < amounts.size() ? amounts.get(i + 1) : null;
      if (one.most() != null && one.isLength() && isTest(one, upper(one), one.span())) {
        i += add(one, upper(one), one.span(), i + 1);
      } else if (next != null
          && !"%".equals(next.unit())
          && isTest(one, next, gap(one.span(), next.span()))) {
        i += 1 + add(one, next, one.span().with(next.span()), i + 2);
      } else if (marked != null && isNextOfList(one, i)) {
        i += add(marked, one, one.span(), i + 1);
      } else {
        i++;
      }
    }
  }

  private static Amount upper(Amount range) {
    return new Amount(range.most(), range.unit(), range.span());
  }

  private static TextSpan gap(TextSpan one, TextSpan next) {
    return new TextSpan(one.to(), Math.max(one.to(), next.from()));
  }

  private boolean isTest(Amount from, Amount to, TextSpan between) {
    String unit = from.unit() != null ? from.unit() : to.unit();
    if (unit == null || unit.equals("%") || between.to() - between.from() > FARTHEST) {
      return false;
    }
    int first = Math.max(0, from.span().from() - AROUND);
    int last = Math.min(post.text().length(), to.span().to() + AROUND);
    String around = sentence(first, last, from.span().with(to.span()));
    return isStretched(from, to, unit)
        && words.to().matcher(between.in(post.text())).matches()
        && words.talk().matcher(around).matches()
        && !words.notCloth().matcher(near(from.span().with(to.span()), 0)).matches();
  }

  private boolean isStretched(Amount from, Amount to, String unit) {
    double ratio = to.mm(unit) / from.mm(unit);
    return ratio > 1 + words.leastStretch() && ratio < 1 + words.mostStretch();
  }

  /** "10 cm goes to 16, the lining to 18", "16 around and 13 up and down": the mark is the same. */
  private boolean isNextOfList(Amount one, int i) {
    String between = gap(last(), one.span()).in(post.text());
    if (between.length() > FARTHEST) {
      return false; // before looking at it, or long texts would take long
    }
    String after = after(one.span().to(), AROUND / 2);
    boolean said = between.matches("(?is).*\\bto\\b.{0,12}") || between.length() <= AROUND / 2;
    boolean other =
        words.lining().matcher(between).matches()
            || words.support().matcher(between).matches()
            || words.along().matcher(between).matches()
            || words.along().matcher(after).matches();
    return !"%".equals(one.unit())
        && said
        && other
        && isStretched(marked, one, marked.unit())
        && amounts.get(i - 1).span().to() <= last().to();
  }

  /**
   * Adds a test; gives how many amounts beside its first it has taken, the relaxed one included.
   */
  private int add(Amount from, Amount to, TextSpan span, int next) {
    String unit = from.unit() != null ? from.unit() : to.unit();
    Map<String, String> lengths = new LinkedHashMap<>();
    lengths.put("marked", from.text(unit));
    lengths.put("stretched", to.text(unit));
    int taken = 1;
    Amount relaxed = next < amounts.size() ? amounts.get(next) : null;
    TextSpan whole = span;
    if (relaxed != null && isRelaxed(relaxed, from, to, unit)) {
      lengths.put("relaxed", relaxed.text(unit));
      whole = span.with(relaxed.span());
      taken++;
    } else if (words.allBack().matcher(after(span.to(), BACK_REACH)).matches()) {
      lengths.put("relaxed", from.text(unit));
    }
    String near = near(whole, found.isEmpty() ? 0 : last().to());
    String inherited = from == marked ? found.get(found.size() - 1).role() : "main";
    String role =
        words.lining().matcher(near).matches()
            ? "lining"
            : words.support().matcher(near).matches() ? "support" : inherited;
    ClothRead read =
        new ClothRead(
            role, words.along().matcher(near).matches() ? "along" : "around", lengths, whole, 0.9);
    if (found.stream()
        .noneMatch(
            one -> one.role().equals(read.role()) && one.direction().equals(read.direction()))) {
      found.add(read);
    }
    marked = new Amount(from.number(), unit, from.span());
    return taken;
  }

  private TextSpan last() {
    return found.get(found.size() - 1).span();
  }

  private boolean isRelaxed(Amount relaxed, Amount from, Amount to, String unit) {
    String between = gap(to.span(), relaxed.span()).in(post.text());
    return between.length() <= FARTHEST
        && relaxed.most() == null
        && !"%".equals(relaxed.unit())
        && !words.lining().matcher(between).matches()
        && words.relaxed().matcher(between).matches()
        && relaxed.mm(unit) >= (1 - words.mostShrinking()) * from.mm(unit)
        && relaxed.mm(unit) <= to.mm(unit);
  }

  /** The words of the test itself: its clause before, from the last test on, and what follows. */
  private String near(TextSpan span, int last) {
    String text = post.text();
    int from = Math.max(last, sentenceStart(span.from()));
    int stop = span.to();
    while (stop < Math.min(text.length(), span.to() + LONGEST_CLAUSE)
        && ".,;!?\n".indexOf(text.charAt(stop)) < 0
        && !Character.isDigit(text.charAt(stop))) {
      stop++;
    }
    return text.substring(Math.min(from, span.from()), stop);
  }

  private String sentence(int first, int last, TextSpan test) {
    int from = Math.max(first, sentenceStart(test.from()));
    return post.text().substring(Math.min(from, test.from()), last);
  }

  private int sentenceStart(int at) {
    String text = post.text();
    int from = at;
    while (from > Math.max(0, at - LONGEST_CLAUSE)
        && "!?;".indexOf(text.charAt(from - 1)) < 0
        && !(text.charAt(from - 1) == '.'
            && from < text.length()
            && Character.isWhitespace(text.charAt(from)))) {
      from--;
    }
    return from;
  }

  private String after(int at, int length) {
    return post.text().substring(at, Math.min(post.text().length(), at + length));
  }
}
