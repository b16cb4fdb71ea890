package easewright.intake;

import easewright.rulebook.DangerWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds words and phrases by the group they belong to: "thumb" and "fingertips" are both of the
 * arm. Endings do not count, nor apostrophes.
 */
final class WordGroups {
  /** How many words "..." in a phrase may stand for. */
  private static final int ROOM = 3;

  private static final String GAP = "\\.\\.\\.";
  private static final String EXACT = "=";
  private static final String NUMBER = "#";
  private static final String LOOK_ALIKE = "!";
  static final String NO_DENIAL = "?";

  private static final Set<String> NUMBER_WORDS =
      Set.of(
          "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
          "twelv", "twenti", "thirti");

  private final Speech speech;
  private final Map<String, String> same;
  private final Map<String, List<Phrase>> byFirst = new HashMap<>();

  private record Phrase(String group, List<List<String>> pieces) {}

  WordGroups(DangerWords words, Speech speech) {
    this.speech = speech;
    this.same = words.same();
    words
        .groups()
        .keySet()
        .forEach(
            group ->
                members(group, words.groups(), new LinkedHashSet<>())
                    .forEach(phrase -> add(group, phrase)));
    words.lookAlikes().forEach(phrase -> add(LOOK_ALIKE, phrase));
    words.noDenial().forEach(phrase -> add(NO_DENIAL, phrase));
  }

  /** Words of a group and of all groups it takes in. */
  private static Set<String> members(
      String group, Map<String, List<String>> groups, Set<String> open) {
    if (!groups.containsKey(group) || !open.add(group)) {
      throw new IllegalArgumentException("No group of words is called " + group + ".");
    }
    Set<String> all = new LinkedHashSet<>();
    for (String one : groups.get(group)) {
      if (one.startsWith("<")) {
        all.addAll(members(one.substring(1, one.length() - 1), groups, open));
      } else {
        all.add(one);
      }
    }
    open.remove(group);
    return all;
  }

  private void add(String group, String phrase) {
    List<List<String>> pieces = new ArrayList<>();
    if (phrase.startsWith(EXACT)) {
      pieces.add(List.of(phrase));
    } else {
      for (String piece : phrase.split(GAP)) {
        pieces.add(
            speech.words(piece.replace(NUMBER, "0")).stream()
                .map(word -> word.plain().equals("0") ? NUMBER : key(word))
                .toList());
      }
    }
    byFirst
        .computeIfAbsent(pieces.get(0).get(0), any -> new ArrayList<>())
        .add(new Phrase(group, pieces));
  }

  private String key(Word word) {
    String plain = word.plain().replace("'", "");
    String meant = same.getOrDefault(plain, plain);
    return meant.equals(word.plain()) ? word.stem() : Speech.stem(meant);
  }

  /**
   * Every mention of each group, by its first word, none over the end of a sentence. Words of a
   * look-alike belong to no group unless a longer phrase of the group holds them.
   */
  Map<String, List<Mention>> in(Post post) {
    List<String> keys = post.words().stream().map(this::key).toList();
    List<Mention> all = new ArrayList<>();
    for (int first = 0; first < keys.size(); first++) {
      String plain = post.words().get(first).plain();
      for (String start : List.of(keys.get(first), NUMBER, EXACT + plain)) {
        if (start.equals(NUMBER) && !isNumber(keys.get(first))) {
          continue;
        }
        for (Phrase phrase : byFirst.getOrDefault(start, List.of())) {
          int last = start.startsWith(EXACT) ? first : end(phrase, keys, first);
          if (last >= 0 && post.sentence()[last] == post.sentence()[first]) {
            all.add(new Mention(phrase.group(), first, last, last - first + 1));
          }
        }
      }
    }
    Map<Integer, Integer> taken = new HashMap<>();
    for (Mention one : all) {
      if (one.name().equals(LOOK_ALIKE)) {
        for (int i = one.first(); i <= one.last(); i++) {
          taken.merge(i, one.words(), Math::max);
        }
      }
    }
    Map<String, List<Mention>> found = new HashMap<>();
    for (Mention one : all) {
      boolean meansNothing = false;
      for (int i = one.first(); i <= one.last(); i++) {
        meansNothing |= taken.getOrDefault(i, 0) >= one.words();
      }
      if (!meansNothing || one.name().equals(NO_DENIAL)) {
        found.computeIfAbsent(one.name(), any -> new ArrayList<>()).add(one);
      }
    }
    found.values().forEach(list -> list.sort(Comparator.comparingInt(Mention::first)));
    return found;
  }

  private static int end(Phrase phrase, List<String> keys, int first) {
    int at = first;
    for (int i = 0; i < phrase.pieces().size(); i++) {
      List<String> piece = phrase.pieces().get(i);
      int skipped = 0;
      while (i > 0 && skipped < ROOM && !stands(piece, keys, at)) {
        at++;
        skipped++;
      }
      if (!stands(piece, keys, at)) {
        return -1;
      }
      at += piece.size();
    }
    return at - 1;
  }

  private static boolean stands(List<String> piece, List<String> keys, int at) {
    for (int i = 0; i < piece.size(); i++) {
      if (at + i >= keys.size()
          || !piece.get(i).equals(keys.get(at + i))
              && !(piece.get(i).equals(NUMBER) && isNumber(keys.get(at + i)))) {
        return false;
      }
    }
    return true;
  }

  private static boolean isNumber(String key) {
    return Character.isDigit(key.charAt(0)) || NUMBER_WORDS.contains(key);
  }
}
