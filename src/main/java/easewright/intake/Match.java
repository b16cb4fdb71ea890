package easewright.intake;

import easewright.english.Mention;
import java.util.BitSet;
import java.util.List;

/**
 * A phrase of the book found in a text.
 *
 * @param saying the phrase
 * @param said where each of its elements stands; a part taken over from the sentence before is left
 *     out
 * @param what of these, those that say what is the matter
 * @param weight how much the phrase tells, the more the rarer its elements
 * @param confidence how sure the reading is, from 0 to 1
 */
record Match(
    Saying saying, List<Mention> said, List<Mention> what, double weight, double confidence) {

  int first() {
    return said.stream().mapToInt(Mention::first).min().orElseThrow();
  }

  int last() {
    return said.stream().mapToInt(Mention::last).max().orElseThrow();
  }

  /** The first word that says what is the matter. */
  int head() {
    return (what.isEmpty() ? said : what).stream().mapToInt(Mention::first).min().orElseThrow();
  }

  BitSet words() {
    BitSet words = new BitSet();
    said.forEach(
        one -> {
          words.set(one.first());
          words.set(one.last());
        });
    return words;
  }

  /** Whether it says all that the other says, and more. */
  boolean outdoes(Match other) {
    BitSet mine = words();
    BitSet theirs = other.words();
    BitSet missing = (BitSet) theirs.clone();
    missing.andNot(mine);
    return missing.isEmpty()
        && (mine.cardinality() > theirs.cardinality()
            || mine.equals(theirs) && weight > other.weight + 1e-9);
  }
}
