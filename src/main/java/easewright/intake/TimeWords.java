package easewright.intake;

import easewright.english.Stretch;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TimeRead;
import easewright.number.TextSpan;
import easewright.number.WordLists;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Finds when a sign shows: "after an hour", "by the evening", "since I washed it". */
final class TimeWords {
  private final Map<String, String> phrases;

  TimeWords(WordLists lists) {
    this.phrases = lists.pairs("times of signs");
  }

  /** Each time goes to the nearest signs of its sentence that are there. */
  List<TimeRead> in(Post post, List<SignRead> signs) {
    List<TimeRead> found = new ArrayList<>();
    List<Stretch> told = new ArrayList<>();
    phrases.entrySet().stream()
        .sorted(
            Comparator.comparingInt((Map.Entry<String, String> one) -> one.getKey().length())
                .reversed())
        .forEach(
            phrase -> {
              String[] words = phrase.getKey().split(" ");
              for (int i = 0; i + words.length <= post.words().size(); i++) {
                Stretch here = new Stretch(i, i + words.length - 1);
                if (stands(words, i, post) && told.stream().noneMatch(one -> meets(one, here))) {
                  told.add(here);
                  add(here, phrase.getValue(), post, signs, found);
                }
              }
            });
    return found;
  }

  /** Whether these words stand there, one after the other. */
  static boolean stands(String[] words, int at, Post post) {
    for (int i = 0; i < words.length; i++) {
      if (!post.words().get(at + i).plain().equals(words[i])) {
        return false;
      }
    }
    return true;
  }

  private static boolean meets(Stretch one, Stretch other) {
    return one.first() <= other.last() && other.first() <= one.last();
  }

  private static void add(
      Stretch here, String time, Post post, List<SignRead> signs, List<TimeRead> found) {
    TextSpan span = post.span(here.first(), here.last());
    int sentence = post.sentence()[here.first()];
    List<SignRead> beside =
        signs.stream()
            .filter(SignRead::present)
            .filter(one -> post.sentence()[Whereabouts.wordAt(post, one.span().from())] == sentence)
            .toList();
    int nearest =
        beside.stream()
            .mapToInt(one -> Whereabouts.wordsBetween(post, span, one.span()))
            .min()
            .orElse(0);
    beside.stream()
        .filter(one -> Whereabouts.wordsBetween(post, span, one.span()) == nearest)
        .forEach(sign -> found.add(new TimeRead(sign.id(), time, span, sign.confidence())));
  }
}
