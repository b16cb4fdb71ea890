package easewright.pattern;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Something the maker decides before cutting. If several things may be combined, every combination
 * is an option, whose id is the ids of its parts joined by "+", or "none".
 *
 * @param id kebab-case id
 * @param name short name
 * @param ask the question, as asked of the maker
 * @param defaultOption id of the default option
 * @param options what can be chosen
 */
public record SheetChoice(
    String id, String name, String ask, String defaultOption, List<Option> options) {

  static final String NONE = "none";

  /** Sixteen combinations, the most that anyone will read through. */
  static final int MOST_PARTS = 4;

  public SheetChoice {
    options = List.copyOf(options);
  }

  /** Whether the chosen id includes an option, alone or combined with others. */
  static boolean taken(String option, String chosen) {
    return chosen != null
        && (option.equals(chosen) || List.of(chosen.split("\\+")).contains(option));
  }

  /** All combinations of some parts: none, each alone, and so on up to all of them. */
  static List<Option> combinations(List<Option> parts) {
    List<Option> options = new ArrayList<>();
    options.add(new Option(NONE, "None", List.of(), List.of(), Map.of()));
    for (Option part : parts) {
      for (Option before : List.copyOf(options)) {
        options.add(before.id().equals(NONE) ? part : before.and(part));
      }
    }
    return options;
  }

  /**
   * One option of a choice.
   *
   * @param id kebab-case id, unique in its choice
   * @param name short name
   * @param requires options that must be chosen with it
   * @param excludes options that cannot be chosen with it
   * @param changesMm what it adds to finished measurements, in mm, by trade term
   */
  public record Option(
      String id,
      String name,
      List<OptionRef> requires,
      List<OptionRef> excludes,
      Map<String, Double> changesMm) {

    public Option {
      requires = List.copyOf(requires);
      excludes = List.copyOf(excludes);
      changesMm = Map.copyOf(changesMm);
    }

    /** Whether it is compatible with the other choices, option ids by choice id. */
    boolean allowedBy(Map<String, String> chosen) {
      for (OptionRef ref : requires) {
        if (!taken(ref.option(), chosen.get(ref.choice()))) {
          return false;
        }
      }
      for (OptionRef ref : excludes) {
        if (taken(ref.option(), chosen.get(ref.choice()))) {
          return false;
        }
      }
      return true;
    }

    private Option and(Option other) {
      List<OptionRef> required = new ArrayList<>(requires);
      required.addAll(other.requires);
      List<OptionRef> excluded = new ArrayList<>(excludes);
      excluded.addAll(other.excludes);
      Map<String, Double> changes = new HashMap<>(changesMm);
      other.changesMm.forEach((key, mm) -> changes.merge(key, mm, Double::sum));
      return new Option(
          id + "+" + other.id, name + " + " + other.name, required, excluded, changes);
    }
  }

  /** The option with an id. */
  public Optional<Option> option(String optionId) {
    for (Option option : options) {
      if (option.id().equals(optionId)) {
        return Optional.of(option);
      }
    }
    return Optional.empty();
  }
}
