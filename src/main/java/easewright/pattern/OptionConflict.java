package easewright.pattern;

/** An option was chosen that cannot stand with the others chosen. */
public final class OptionConflict extends IllegalArgumentException {

  private static final long serialVersionUID = 1;

  private final String choice;
  private final String option;

  OptionConflict(String choice, String option) {
    super(choice + "/" + option);
    this.choice = choice;
    this.option = option;
  }

  /** Id of the choice. */
  public String choice() {
    return choice;
  }

  /** Id of the option. */
  public String option() {
    return option;
  }
}
