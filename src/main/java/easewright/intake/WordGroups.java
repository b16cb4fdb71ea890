package easewright.intake;

import easewright.english.Mention;
import easewright.english.Speech;
import easewright.english.Word;
import easewright.number.WordLists;
import easewright.rulebook.DangerWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds words and phrases by the group they belong to: "thumb" and "fingertips" are both of the
 * arm. Endings do not count, nor apostrophes.
 */
final class WordGroups {
  /** How many words "..." in a phrase may stand for. */
  private static final int ROOM = 3;

  private static final String GAP = "\\.\\.\\.";
  private static final int LONGEST_SHORT = 5;
  private static final String EXACT = "=";
  private static final String NUMBER = "#";
  private static final Pattern RANGE =
      Pattern.compile("#(\\d+(?:\\.\\d+)?)-(\\d+(?:\\.\\d+)?)(\\p{L}*)");
  private static final Pattern VALUE = Pattern.compile("(\\d+(?:[.,]\\d+)?)(\\p{L}*)");
  private static final String LOOK_ALIKE = "!";
  static final String NO_DENIAL = "?";
  static final String DENIAL = "-";

  private final Speech speech;
  private final WordLists lists;
  private final Map<String, String> same;
  private final Map<String, List<Phrase>> byFirst = new HashMap<>();

  private final Map<String, Range> ranges = new HashMap<>();

  private record Phrase(String group, List<List<String>> pieces) {}

  /** Numbers from the least to the most, both included, with a unit written to them or none. */
  private record Range(double least, double most, String unit) {
    boolean holds(String key) {
      Matcher value = VALUE.matcher(key);
      if (!value.matches() || !value.group(2).equals(unit)) {
        return false;
      }
      double number = Double.parseDouble(value.group(1).replace(',', '.'));
      return least <= number && number <= most;
    }
  }

  WordGroups(DangerWords words, Speech speech, WordLists lists) {
    this.lists = lists;
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
    words.denial().forEach(phrase -> add(DENIAL, phrase));
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
    for (String piece : phrase.split(GAP)) {
      pieces.add(
          Arrays.stream(piece.strip().split(" ")).flatMap(word -> keys(word).stream()).toList());
    }
    byFirst
        .computeIfAbsent(pieces.get(0).get(0), any -> new ArrayList<>())
        .add(new Phrase(group, pieces));
  }

  private List<String> keys(String written) {
    Matcher range = RANGE.matcher(written);
    if (range.matches()) {
      ranges.put(
          written,
          new Range(
              Double.parseDouble(range.group(1)),
              Double.parseDouble(range.group(2)),
              range.group(3)));
    }
    return written.startsWith(EXACT) || written.startsWith(NUMBER)
        ? List.of(written)
        : speech.words(written).stream().map(this::key).toList();
  }

  private String key(Word word) {
    String plain = word.plain().replace("'", "");
    String meant = same.getOrDefault(plain, plain);
    return meant.equals(word.plain()) ? word.stem() : speech.stem(meant);
  }

  /**
   * Every mention of each group, by its first word, none over the end of a sentence. Words of a
   * look-alike belong to no group unless a longer phrase of the group holds them.
   */
  Map<String, List<Mention>> in(Post post) {
    List<Mention> all = all(post);
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

  /** Words of figures of speech, machines and cloth. */
  BitSet lookAlikes(Post post) {
    BitSet words = new BitSet();
    for (Mention one : all(post)) {
      if (one.name().equals(LOOK_ALIKE)) {
        words.set(one.first(), one.last() + 1);
      }
    }
    return words;
  }

  private List<Mention> all(Post post) {
    List<String> keys = post.words().stream().map(this::key).toList();
    List<Mention> all = new ArrayList<>();
    for (int first = 0; first < keys.size(); first++) {
      for (String start : starts(keys.get(first), post.words().get(first))) {
        for (Phrase phrase : byFirst.getOrDefault(start, List.of())) {
          int last = end(phrase, keys, post.words(), first);
          if (last >= 0
              && post.sentence()[last] == post.sentence()[first]
              && (last > first || isSpelledRight(post, first))) {
            all.add(new Mention(phrase.group(), first, last, last - first + 1));
          }
        }
      }
    }
    return all;
  }

  private List<String> starts(String key, Word word) {
    List<String> starts = new ArrayList<>(List.of(key, EXACT + word.plain()));
    if (isNumber(key)) {
      starts.add(NUMBER);
      ranges.forEach(
          (written, range) -> {
            if (range.holds(word.plain())) {
              starts.add(written);
            }
          });
    }
    return starts;
  }

  /** A short word alone is not taken for a slip of another: a chem is no chemo. */
  private static boolean isSpelledRight(Post post, int word) {
    Word one = post.words().get(word);
    return one.plain().length() > LONGEST_SHORT
        || post.text().substring(one.from(), one.to()).length() <= one.plain().length()
            && post.text().regionMatches(true, one.from(), one.plain(), 0, one.to() - one.from())
        || one.plain().contains("'");
  }

  private int end(Phrase phrase, List<String> keys, List<Word> words, int first) {
    int at = first;
    for (int i = 0; i < phrase.pieces().size(); i++) {
      List<String> piece = phrase.pieces().get(i);
      int skipped = 0;
      while (i > 0 && skipped < ROOM && !stands(piece, keys, words, at)) {
        at++;
        skipped++;
      }
      if (!stands(piece, keys, words, at)) {
        return -1;
      }
      at += piece.size();
    }
    return at - 1;
  }

  private boolean stands(List<String> piece, List<String> keys, List<Word> words, int at) {
    if (at + piece.size() > keys.size()) {
      return false;
    }
    for (int i = 0; i < piece.size(); i++) {
      String wanted = piece.get(i);
      String key = keys.get(at + i);
      boolean same =
          wanted.equals(key)
              || wanted.equals(NUMBER) && isNumber(key)
              || ranges.containsKey(wanted) && ranges.get(wanted).holds(words.get(at + i).plain())
              || wanted.startsWith(EXACT)
                  && wanted.substring(1).equals(words.get(at + i).plain().replace("'", ""));
      if (!same) {
        return false;
      }
    }
    return true;
  }

  private boolean isNumber(String key) {
    return Character.isDigit(key.charAt(0)) || lists.has("stems of numbers", key);
  }
}
