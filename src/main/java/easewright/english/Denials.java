package easewright.english;

import easewright.number.WordLists;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Which denials of a post reach which word. Each word's are found once, by walking back from it no
 * farther than a denial reaches.
 */
public final class Denials {
  /** How many words of meaning a "no" reaches. */
  public static final int REACH = 7;

  private static final int FARTHEST_OR = 6;

  private final List<Word> words;
  private final List<Break> breaks;
  private final BitSet parts;
  private final boolean[] means;
  private final WordLists lists;
  private final List<List<Mention>> byLastWord = new ArrayList<>();
  private final List<List<Mention>> reaching = new ArrayList<>();

  /**
   * @param denials cues that deny
   * @param parts words a piece of the garment is named from
   * @param means for each word whether it means something
   */
  public Denials(
      List<Word> words,
      List<Break> breaks,
      Mentions denials,
      BitSet parts,
      boolean[] means,
      WordLists lists) {
    this.words = words;
    this.breaks = breaks;
    this.parts = parts;
    this.means = means;
    this.lists = lists;
    for (int i = 0; i < words.size(); i++) {
      byLastWord.add(List.of());
      reaching.add(null);
    }
    for (Mention one : denials) {
      List<Mention> here = new ArrayList<>(byLastWord.get(one.last()));
      here.add(one);
      byLastWord.set(one.last(), here);
    }
  }

  /** The denials that reach a word, save those that deny a nearer thing of their kind. */
  public List<Mention> reaching(int head) {
    List<Mention> found = reaching.get(head);
    if (found == null) {
      found = find(head);
      reaching.set(head, found);
    }
    return found;
  }

  private List<Mention> find(int head) {
    List<Mention> found = new ArrayList<>();
    boolean deeds = true; // whether a "no" of a deed still reaches this far
    boolean things = true;
    int distance = 0;
    int nearest = -1; // the nearest denial of a thing: "no numbness, no tingling" denies each once
    for (int i = head; i > 0 && distance <= REACH && (deeds || things); i--) {
      Break here = breaks.get(i);
      if (here.compareTo(Break.TURN) >= 0) {
        break;
      }
      if (here == Break.PAUSE) {
        deeds = false;
        things &= isOr(i) || isOr(i - 1) || orFollows(i);
      } else if (here == Break.JOIN) {
        deeds = false;
        things &= words.get(i).plain().equals("and") && !newSubject(i + 1);
      }
      distance += means[i] ? 1 : 0;
      for (Mention no : byLastWord.get(i - 1)) {
        boolean noun = isOfNoun(no);
        boolean reaches = noun ? things && nearest <= no.last() : deeds;
        if (reaches && distance <= REACH) {
          found.add(no);
        }
      }
      for (Mention no : byLastWord.get(i - 1)) {
        nearest = isOfThing(no) ? Math.max(nearest, no.first()) : nearest;
      }
    }
    return found;
  }

  private boolean isOr(int word) {
    String plain = words.get(word).plain();
    return plain.equals("or") || plain.equals("nor");
  }

  /** "No gaping, bulging or digging": the list goes on. */
  private boolean orFollows(int from) {
    for (int i = from; i < words.size() && i < from + FARTHEST_OR; i++) {
      if (i > from && breaks.get(i).compareTo(Break.TURN) >= 0) {
        return false;
      }
      if (isOr(i)) {
        return true;
      }
    }
    return false;
  }

  private boolean newSubject(int word) {
    return word < words.size()
        && (lists.has("subjects after and", words.get(word).plain()) || parts.get(word));
  }

  /** Whether a denial is of a thing named, not of a deed. */
  public boolean isOfNoun(Mention no) {
    return lists.has("denials of things", words.get(no.last()).plain());
  }

  /** A "no" that denies a thing or that there is any, not a deed. */
  public boolean isOfThing(Mention no) {
    return isOfNoun(no) || words.get(no.last()).plain().equals("nothing");
  }
}
