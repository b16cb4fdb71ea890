package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.number.Amount;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;

/**
 * A post with the tokens each of its words may stand for: the piece of the garment it names, a
 * denial, or its own stem.
 */
final class TokenizedPost {
  static final String NO = "no";
  static final String PART = "part ";

  private final Post post;
  private final Map<String, String> oneVerb;
  private final Mention[] parts;
  private final String[] topics;
  private final BitSet no = new BitSet();
  private final BitSet amounts = new BitSet();
  private final BitSet skipped = new BitSet();

  TokenizedPost(Post post, List<Amount> amounts, Lexicon lexicon) {
    this.post = post;
    this.oneVerb = post.lists().pairs("one verb");
    int size = post.words().size();
    this.parts = new Mention[size];
    this.topics = new String[size];
    for (Mention one : post.mentions()) {
      boolean verb = post.words().get(one.first()).plain().endsWith("ed"); // "scooped the neck"
      boolean whole = one.last() - one.first() + 1 == one.words() && !verb;
      Mention other = parts[one.first()];
      if (lexicon.isPart(one.name()) && whole && (other == null || one.words() > other.words())) {
        parts[one.first()] = one;
      }
    }
    Mention last = null;
    for (int i = 0; i < size; i++) {
      boolean near = last != null && post.sentence()[i] - post.sentence()[last.first()] <= 1;
      topics[i] = near ? last.name() : "";
      last = parts[i] == null ? last : parts[i];
      skipped.set(i, post.lists().has("small words", post.words().get(i).plain()));
    }
    post.cues("no").stream()
        .filter(one -> one.first() == one.last())
        .forEach(one -> no.set(one.first()));
    for (Amount amount : amounts) {
      int end = Whereabouts.wordAt(post, amount.span().to() - 1);
      this.amounts.set(Whereabouts.wordAt(post, amount.span().from()), end + 1);
    }
    skipped.or(this.amounts);
  }

  int size() {
    return post.words().size();
  }

  boolean isSkipped(int i) {
    return skipped.get(i);
  }

  /** Whether no pause or end of a sentence stands before this word. */
  boolean goesOn(int i) {
    // the stroke of "3/4" is no pause
    boolean amount = i > 0 && amounts.get(i) && amounts.get(i - 1);
    return amount || post.breaks().get(i).compareTo(Break.PAUSE) < 0;
  }

  /** Whether another piece, or another thing said, begins here. */
  boolean isOther(int i) {
    return parts[i] != null || post.breaks().get(i) == Break.JOIN;
  }

  /** What stands here for a token; null if nothing does. */
  Mention at(String token, int i) {
    if (token.startsWith(PART)) {
      String name = token.substring(PART.length());
      if (parts[i] != null && parts[i].name().equals(name)) {
        return parts[i];
      }
      return isPronoun(i) && name.equals(topics[i]) ? new Mention(name, i, i, 1) : null;
    }
    boolean here = token.equals(NO) ? no.get(i) : word(i).equals(token);
    return here ? new Mention("=" + token, i, i, 1) : null;
  }

  private boolean isPronoun(int i) {
    return post.lists().has("words for a piece", post.words().get(i).plain());
  }

  /** Every token this word may stand for. */
  List<String> tokens(int i) {
    List<String> tokens = new ArrayList<>(List.of(word(i)));
    if (parts[i] != null) {
      tokens.add(PART + parts[i].name());
    } else if (isPronoun(i)) {
      tokens.add(PART + topics[i]);
    }
    if (no.get(i)) {
      tokens.add(NO);
    }
    return tokens;
  }

  /** What must be said for this text, a phrase of the book, to be found in another. */
  List<String> phrase() {
    List<String> tokens = new ArrayList<>();
    for (int i = 0; i < size(); i++) {
      if (parts[i] != null) {
        tokens.add(PART + parts[i].name());
        i = parts[i].last();
      } else if (no.get(i)) {
        tokens.add(NO);
      } else if (!isSkipped(i)) {
        tokens.add(word(i));
      }
    }
    return tokens;
  }

  private String word(int i) {
    String stem = post.words().get(i).stem();
    return oneVerb.getOrDefault(stem, stem);
  }
}
