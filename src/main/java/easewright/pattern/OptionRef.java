package easewright.pattern;

/**
 * An option of a choice, written "choice/option" in a sheet.
 *
 * @param choice id of the choice
 * @param option id of the option
 */
public record OptionRef(String choice, String option) {

  static OptionRef parse(String text) {
    int slash = text.indexOf('/');
    return new OptionRef(text.substring(0, slash), text.substring(slash + 1));
  }

  @Override
  public String toString() {
    return choice + "/" + option;
  }
}
