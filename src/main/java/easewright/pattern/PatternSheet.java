package easewright.pattern;

import easewright.cloth.ClothNeed;
import easewright.size.SizeChart;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A pattern described for the service.
 *
 * @param id kebab-case id
 * @param name display name
 * @param family kind of garment, e.g. "sports-bra"
 * @param summary one or two sentences for a list
 * @param construction how it is made, in a few sentences
 * @param constructionType how it supports
 * @param supportClass the support it is designed for
 * @param seamAllowanceMm drafted allowance in mm, unless a piece states another
 * @param sizes its sizes, a grid already expanded band by band
 * @param choices what the maker decides
 * @param pieces all pieces of all choices
 * @param cloth cloth requirements of each layer
 * @param trims elastics, straps and hardware of all choices
 */
public record PatternSheet(
    String id,
    String name,
    String family,
    String summary,
    String construction,
    ConstructionType constructionType,
    SupportClass supportClass,
    double seamAllowanceMm,
    List<PatternSize> sizes,
    List<SheetChoice> choices,
    List<Piece> pieces,
    Map<Layer, ClothNeed> cloth,
    List<Trim> trims) {

  public PatternSheet {
    sizes = List.copyOf(sizes);
    choices = List.copyOf(choices);
    pieces = List.copyOf(pieces);
    cloth = Map.copyOf(cloth);
    trims = List.copyOf(trims);
  }

  /** The size with a name. */
  public Optional<PatternSize> size(String sizeName) {
    return sizes.stream().filter(size -> size.name().equals(sizeName)).findFirst();
  }

  /** The sizes as a chart to find a body on; each size's id is its name. */
  public SizeChart chart() {
    return SizeChart.sharing(sizes.stream().flatMap(size -> size.cells().stream()).toList());
  }

  /**
   * Whether a garment of one size is tighter or smaller in any measurement than one of another.
   *
   * @throws java.util.NoSuchElementException if the pattern has no such sizes
   */
  public boolean isTighter(String sizeName, String than) {
    Map<String, Double> finished = size(sizeName).orElseThrow().finishedMm();
    return size(than).orElseThrow().finishedMm().entrySet().stream()
        .anyMatch(one -> finished.getOrDefault(one.getKey(), one.getValue()) < one.getValue());
  }

  /** The choice with an id. */
  public Optional<SheetChoice> choice(String choiceId) {
    return choices.stream().filter(choice -> choice.id().equals(choiceId)).findFirst();
  }

  /**
   * All choices: those made, and defaults for the rest.
   *
   * @param chosen option ids by choice id
   * @throws IllegalArgumentException with one sentence, if a choice or option does not exist or two
   *     options are incompatible
   */
  public Map<String, String> decided(Map<String, String> chosen) {
    for (String choiceId : chosen.keySet()) {
      if (choice(choiceId).isEmpty()) {
        throw new IllegalArgumentException("The pattern offers no choice '" + choiceId + "'.");
      }
    }
    Map<String, String> decided = new LinkedHashMap<>();
    for (SheetChoice choice : choices) {
      decided.put(choice.id(), chosen.getOrDefault(choice.id(), choice.defaultOption()));
    }
    for (SheetChoice choice : choices) {
      String optionId = decided.get(choice.id());
      SheetChoice.Option option =
          choice
              .option(optionId)
              .orElseThrow(
                  () ->
                      new IllegalArgumentException(
                          "The choice '" + choice.id() + "' has no option '" + optionId + "'."));
      if (!option.allowedBy(decided)) {
        throw new OptionConflict(choice.id(), optionId);
      }
    }
    return decided;
  }

  /** What is cut under the options chosen, the rest by default; see {@link #decided}. */
  public Cut cut(Map<String, String> chosen) {
    Map<String, String> decided = decided(chosen);
    return new Cut(pieces.stream().filter(piece -> piece.when().holds(decided)).toList());
  }

  /** The trims needed under the options chosen, the rest by default; see {@link #decided}. */
  public List<Trim> trims(Map<String, String> chosen) {
    Map<String, String> decided = decided(chosen);
    return trims.stream().filter(trim -> trim.when().holds(decided)).toList();
  }

  /** Finished measurements in mm of a size under the options chosen; see {@link #decided}. */
  public Map<String, Double> finishedMm(PatternSize size, Map<String, String> chosen) {
    Map<String, Double> finished = new HashMap<>(size.finishedMm());
    decided(chosen)
        .forEach(
            (choiceId, optionId) ->
                choice(choiceId)
                    .flatMap(choice -> choice.option(optionId))
                    .orElseThrow()
                    .changesMm()
                    .forEach((key, mm) -> finished.merge(key, mm, Double::sum)));
    return finished;
  }
}
