package easewright.pattern;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Something the maker decides before cutting.
 *
 * @param id kebab-case id
 * @param name short name
 * @param ask the question, as asked of the maker
 * @param defaultOption id of the option taken when nobody says
 * @param options what can be chosen
 */
public record Choice(
    String id, String name, String ask, String defaultOption, List<Option> options) {

  public Choice {
    options = List.copyOf(options);
  }

  /**
   * One way of deciding.
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

    /** Whether it can stand beside what else is chosen, option ids by choice id. */
    boolean allowedBy(Map<String, String> chosen) {
      return requires.stream().allMatch(ref -> ref.option().equals(chosen.get(ref.choice())))
          && excludes.stream().noneMatch(ref -> ref.option().equals(chosen.get(ref.choice())));
    }
  }

  /** The option with an id. */
  public Optional<Option> option(String optionId) {
    return options.stream().filter(option -> option.id().equals(optionId)).findFirst();
  }
}
