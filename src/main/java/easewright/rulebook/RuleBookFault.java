package easewright.rulebook;

/** The rule book itself is wrong; the message names the file and what would be right. */
public class RuleBookFault extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public RuleBookFault(String message) {
    super(message);
  }
}
