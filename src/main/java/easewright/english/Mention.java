package easewright.english;

/**
 * A stretch of words that stands for something.
 *
 * @param name what it stands for: "rise", "strap", or the name of a cue
 * @param first index of its first word
 * @param last index of its last word
 * @param words how many of the words between are its own
 */
public record Mention(String name, int first, int last, int words) {
  public boolean covers(int word) {
    return first <= word && word <= last;
  }

  /** Whether it says the same place in more words, with none of another's between. */
  public boolean outdoes(Mention other) {
    return first <= other.first
        && other.last <= last
        && words > other.words
        && last - first + 1 == words;
  }
}
