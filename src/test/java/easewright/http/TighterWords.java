package easewright.http;

import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * All texts of the catalog about changes that tighten: names, ids, effects, and steps. Nothing is
 * listed by hand.
 */
final class TighterWords {
  /** Fewer words than this are too common to identify an adjustment. */
  private static final int LEAST_WORDS = 4;

  /** Each forbidden phrase as words, by its first two words. */
  private final Map<String, List<Said>> byBeginning = new HashMap<>();

  private record Said(String adjustment, List<String> words) {}

  TighterWords(Catalog catalog) {
    Collection<AdjustmentEntry> all = catalog.adjustments().values();
    String harmless =
        all.stream()
            .filter(entry -> !entry.tightens())
            .flatMap(TighterWords::stretches)
            .map(said -> " " + String.join(" ", words(said)) + " ")
            .collect(Collectors.joining("\n"));
    for (AdjustmentEntry entry : all) {
      if (entry.tightens()) {
        Stream.concat(Stream.of(entry.name()), stretches(entry))
            .map(TighterWords::words)
            .filter(words -> !harmless.contains(" " + String.join(" ", words) + " "))
            .forEach(
                words ->
                    byBeginning
                        .computeIfAbsent(
                            words.get(0) + " " + words.get(1), begins -> new ArrayList<>())
                        .add(new Said(entry.id(), words)));
      }
    }
  }

  /** The texts of an adjustment, split where amounts are filled in. */
  private static Stream<String> stretches(AdjustmentEntry entry) {
    return Stream.concat(Stream.of(entry.does()), entry.steps().stream())
        .flatMap(said -> Stream.of(said.split("\\{\\w+\\}")))
        .map(String::strip)
        .filter(said -> words(said).size() >= LEAST_WORDS);
  }

  /** Words without punctuation; the id of an adjustment contains the words of its name. */
  static List<String> words(String text) {
    return Stream.of(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
        .filter(word -> !word.isEmpty())
        .toList();
  }

  /**
   * Every change that tightens and is mentioned in a text, with the surrounding words.
   *
   * @param slack changes that only take up measured slack; their texts are allowed
   */
  List<String> in(List<String> text, List<AdjustmentNote> slack) {
    String allowed =
        slack.stream()
            .flatMap(one -> Stream.concat(Stream.of(one.name(), one.does()), one.steps().stream()))
            .map(said -> " " + String.join(" ", words(said)) + " ")
            .collect(Collectors.joining("\n"));
    List<String> found = new ArrayList<>();
    for (int i = 0; i + 1 < text.size(); i++) {
      for (Said said :
          byBeginning.getOrDefault(text.get(i) + " " + text.get(i + 1), List.<Said>of())) {
        int end = i + said.words().size();
        if (end <= text.size()
            && text.subList(i, end).equals(said.words())
            && !allowed.contains(" " + String.join(" ", said.words()) + " ")) {
          found.add(
              said.adjustment()
                  + " in: … "
                  + String.join(
                      " ", text.subList(Math.max(0, i - 10), Math.min(text.size(), end + 10)))
                  + " …");
        }
      }
    }
    return found;
  }
}
