package easewright.rulebook;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * How wearers say things: {@code rules/everyday}. Every entry is a name and the words or phrases
 * that stand for it.
 *
 * @param parts pieces of the garment one complaint can be about
 * @param places where on the garment or the body
 * @param ideas what is seen, felt or done
 * @param dropped words with no meaning of their own
 * @param alone ideas that tell enough without a piece or a place being named
 * @param usual the signs wearers report most
 * @param rather sign to the signs it takes the place of when one sentence says both
 * @param shortForms short form or slip of the pen to the word meant
 * @param weak ideas too common to be read from "it"
 * @param fine part to the signs denied when it is said to be fine
 * @param none idea to the signs denied when there is none of it and no piece is named: that of the
 *     piece mentioned last, or else the first; and cue to the danger it clears if plainly said
 * @param cues words that deny, weaken, time or mask what is said beside them
 * @param circumstances id to its phrases
 * @param measurements wire name of a body measurement to the words for it
 * @param perhaps words that may mean such a garment
 * @param garment words for the kind of garment this is about
 * @param replies "yes", "no" and "unsure" to the phrases that say so
 * @param changes adjustment id to the phrases for having done it
 * @param trials adjustment id to the phrases for holding, pinning or basting it for a look
 * @param beliefs cause id to the phrases for suspecting it
 * @param so sign id to more ways of saying it than the catalog's phrases
 * @param notSo sign id to ways of saying that it is not so
 * @param danger how dangers to health are mentioned
 * @param reader name of a list to the small words that reading depends on
 */
public record EverydayWords(
    Map<String, List<String>> parts,
    Map<String, List<String>> places,
    Map<String, List<String>> ideas,
    List<String> dropped,
    List<String> alone,
    List<String> usual,
    Map<String, List<String>> rather,
    @JsonProperty("short forms") Map<String, String> shortForms,
    List<String> weak,
    Map<String, List<String>> fine,
    Map<String, List<String>> none,
    Map<String, List<String>> cues,
    Map<String, List<String>> circumstances,
    Map<String, List<String>> measurements,
    List<String> perhaps,
    List<String> garment,
    Map<String, List<String>> replies,
    Map<String, List<String>> changes,
    Map<String, List<String>> trials,
    Map<String, List<String>> beliefs,
    Map<String, List<String>> so,
    @JsonProperty("not so") Map<String, List<String>> notSo,
    DangerWords danger,
    Map<String, List<String>> reader) {

  /** The cue that something else than such a garment is spoken of. */
  private static final String OTHER_THING = "other thing";

  /** The list of what is measured for other things. */
  private static final String OTHER_MEASUREMENTS = "other measurements";

  public EverydayWords {
    trials = trials == null ? Map.of() : trials;
    so = so == null ? Map.of() : so;
    notSo = notSo == null ? Map.of() : notSo;
    reader = reader == null ? Map.of() : reader;
  }

  /**
   * The same for garments called so: these words, and those for its pieces and places, speak for
   * the garment, not for another thing. What is denied of pieces it lacks is forgotten.
   *
   * @param measured what is measured for them, by the name in requests, to the words for it
   */
  EverydayWords about(List<String> called, Map<String, List<String>> measured) {
    Map<String, List<String>> lists = new LinkedHashMap<>(reader);
    lists.computeIfPresent(
        OTHER_MEASUREMENTS,
        (list, said) ->
            said.stream()
                .filter(one -> measured.values().stream().noneMatch(words -> words.contains(one)))
                .toList());
    Map<String, List<String>> others = new LinkedHashMap<>(cues);
    others.computeIfPresent(
        OTHER_THING,
        (cue, said) ->
            said.stream().filter(one -> !called.contains(one) && !isOfTheGarment(one)).toList());
    Map<String, List<String>> denied = new LinkedHashMap<>(none);
    denied.values().removeIf(List::isEmpty);
    return new EverydayWords(
        parts,
        places,
        ideas,
        dropped,
        alone,
        usual,
        rather,
        shortForms,
        weak,
        fine,
        denied,
        others,
        circumstances,
        measured,
        perhaps,
        Stream.concat(garment.stream(), called.stream()).distinct().toList(),
        replies,
        changes,
        trials,
        beliefs,
        so,
        notSo,
        danger,
        lists);
  }

  private boolean isOfTheGarment(String word) {
    return Stream.of(parts, places)
        .flatMap(names -> names.values().stream())
        .anyMatch(words -> words.contains(word));
  }
}
