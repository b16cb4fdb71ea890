package easewright.intake;

import easewright.english.Break;
import easewright.english.Word;
import easewright.intake.Reading.SignRead;
import easewright.number.TextSpan;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.stream.Stream;

/**
 * What a text says of the garment of somebody else beside the writer's own: "mine fits but my
 * sister's rides up", or lines quoted from another's post. It is not read as the writer's; a danger
 * stands whoever it is told of.
 */
final class OthersSaid {
  private final BitSet words = new BitSet();
  private final List<TextSpan> spans = new ArrayList<>();
  private final Post post;

  private OthersSaid(Post post) {
    this.post = post;
  }

  /** What is said of others; nothing where the writer speaks of no garment of her own. */
  static OthersSaid in(Post post) {
    OthersSaid found = new OthersSaid(post);
    for (int i = 0; i < post.words().size(); i++) {
      if (!found.words.get(i) && (found.isTheirs(i) || found.isQuoted(i) || found.goesOn(i))) {
        found.add(i, found.isQuoted(i) ? post.sentenceOf(i).last() : found.end(i));
      }
    }
    return found.speaksOfHerOwn() ? found : new OthersSaid(post);
  }

  /** The words that speak of others. */
  BitSet words() {
    return words;
  }

  /** Stretches that speak of others, beside these. */
  @SafeVarargs
  final List<TextSpan> and(List<TextSpan>... more) {
    return Stream.concat(spans.stream(), Stream.of(more).flatMap(List::stream)).toList();
  }

  /** Whether a sign was read from words most of which speak of others. */
  boolean isOf(SignRead sign) {
    if (spans.isEmpty()) {
      return false;
    }
    int first = Whereabouts.wordAt(post, sign.span().from());
    int last = Whereabouts.wordAt(post, sign.span().to() - 1);
    return 2 * words.get(first, last + 1).cardinality() > last - first;
  }

  private void add(int first, int last) {
    words.set(first, last + 1);
    spans.add(post.span(first, last));
  }

  private boolean has(String list, int word) {
    return word < post.words().size() && post.lists().has(list, post.words().get(word).plain());
  }

  /** "My sister's rides up", "hers gapes"; not "my sister's right". */
  private boolean isTheirs(int word) {
    Word one = post.words().get(word);
    boolean whose = post.text().substring(one.from(), one.to()).matches(".*['\u2019][sS]");
    return (has("garments of others", word) || whose && has("other wearers", word))
        && has("after another's", word + 1);
  }

  private boolean isQuoted(int word) {
    int before = word == 0 ? 0 : post.words().get(word - 1).to();
    String gap = post.text().substring(before, post.words().get(word).from());
    int line = gap.lastIndexOf('\n');
    return (word == 0 || line >= 0) && gap.substring(line + 1).strip().equals(">");
  }

  /** A sentence that begins with "she" or "her" right after one that speaks of her. */
  private boolean goesOn(int word) {
    return word > 0
        && words.get(word - 1)
        && post.sentenceOf(word).first() == word
        && has("goes on of another", word);
  }

  /** The end of the sentence, or where the writer comes back to her own. */
  private int end(int word) {
    int last = post.sentenceOf(word).last();
    for (int i = word + 1; i <= last; i++) {
      boolean turned = post.breaks().get(i - 1) == Break.TURN;
      boolean begins = turned || post.breaks().get(i) != Break.NONE;
      if (begins && has("back to her own", i)) {
        return turned ? i - 2 : i - 1;
      }
    }
    return last;
  }

  private boolean speaksOfHerOwn() {
    for (int i = 0; i < post.words().size(); i++) {
      if (!words.get(i) && has("her own", i)) {
        return true;
      }
    }
    return false;
  }
}
