package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Groups of words that say something when they stand together.
 *
 * @param near groups that must stand in one sentence, none farther from the first than the reach
 * @param anywhere groups that must stand anywhere in the text
 * @param unless groups that must not stand near in the same sentence
 * @param never groups that must not stand anywhere in the text
 * @param reach how many words may lie between
 */
record WordPattern(
    List<String> near, List<String> anywhere, List<String> unless, List<String> never, int reach) {
  private static final int REACH = 9;

  /** How far around a match its look-alikes are looked for. */
  static final int AROUND = 3;

  /** The most words one mention can have, so that no mention of a stretch is overlooked. */
  private static final int LONGEST = 24;

  /** What is found of it in a text: its mentions, that of its first group first. */
  record Found(WordPattern pattern, List<Mention> said) {
    int first() {
      return said.stream().mapToInt(Mention::first).min().orElseThrow();
    }

    int last() {
      return said.stream().mapToInt(Mention::last).max().orElseThrow();
    }
  }

  /**
   * Reads a pattern: names of groups; {@code @name} stands anywhere, {@code !name} must not stand
   * near, {@code -name} nowhere, {@code ~n} is the reach.
   */
  static WordPattern of(String written) {
    List<String> near = new ArrayList<>();
    List<String> anywhere = new ArrayList<>();
    List<String> unless = new ArrayList<>();
    List<String> never = new ArrayList<>();
    int reach = REACH;
    for (String one : written.split(" ")) {
      switch (one.charAt(0)) {
        case '@' -> anywhere.add(one.substring(1));
        case '!' -> unless.add(one.substring(1));
        case '-' -> never.add(one.substring(1));
        case '~' -> reach = Integer.parseInt(one.substring(1));
        default -> near.add(one);
      }
    }
    return new WordPattern(
        List.copyOf(near), List.copyOf(anywhere), List.copyOf(unless), List.copyOf(never), reach);
  }

  /** Wherever it stands in a text. */
  List<Found> in(Map<String, List<Mention>> mentions, Post post) {
    if (!mentions.keySet().containsAll(near)
        || !mentions.keySet().containsAll(anywhere)
        || never.stream().anyMatch(mentions::containsKey)) {
      return List.of();
    }
    List<Found> found = new ArrayList<>();
    for (Mention anchor : mentions.get(near.get(0))) {
      List<Mention> said = new ArrayList<>(List.of(anchor));
      for (int i = 1; i < near.size() && said.size() == i; i++) {
        Mention nearest = nearest(mentions.get(near.get(i)), anchor, said, post);
        if (nearest != null) {
          said.add(nearest);
        }
      }
      Found one = new Found(this, said);
      if (said.size() == near.size() && !isLookAlike(one, mentions, post)) {
        found.add(one);
      }
    }
    return found;
  }

  private Mention nearest(List<Mention> all, Mention anchor, List<Mention> taken, Post post) {
    Mention best = null;
    int least = reach + 1;
    for (int i = Mentions.indexFrom(all, anchor.first() - reach - LONGEST); i < all.size(); i++) {
      Mention one = all.get(i);
      if (one.first() > anchor.last() + reach) {
        break;
      }
      int distance =
          Math.max(0, Math.max(one.first() - anchor.last(), anchor.first() - one.last()));
      boolean overlaps =
          taken.stream().anyMatch(t -> t.first() <= one.last() && one.first() <= t.last());
      if (distance < least
          && !overlaps
          && post.sentence()[one.first()] == post.sentence()[anchor.first()]) {
        best = one;
        least = distance;
      }
    }
    return best;
  }

  private boolean isLookAlike(Found found, Map<String, List<Mention>> mentions, Post post) {
    for (String group : unless) {
      List<Mention> all = mentions.getOrDefault(group, List.of());
      for (int i = Mentions.indexFrom(all, found.first() - AROUND - LONGEST); i < all.size(); i++) {
        Mention one = all.get(i);
        if (one.first() > found.last() + AROUND) {
          break;
        }
        boolean near = one.last() >= found.first() - AROUND;
        boolean own = found.said().stream().anyMatch(said -> said.covers(one.first()));
        if (near && !own && post.sentence()[one.first()] == post.sentence()[found.first()]) {
          return true;
        }
      }
    }
    return false;
  }
}
