package easewright.rulebook;

/** A drawing of a garment that cannot be read. */
public class OutlineFault extends RuleBookFault {
  private static final long serialVersionUID = 1L;

  /** Line of the file, from 1; 0 if unknown. */
  private final int line;

  /** What would be right, as a sentence. */
  private final String remedy;

  OutlineFault(int line, String problem, String remedy) {
    super(problem);
    this.line = line;
    this.remedy = remedy;
  }

  /** Line of the file, from 1; 0 if unknown. */
  public int line() {
    return line;
  }

  /** What would be right, as a sentence. */
  public String remedy() {
    return remedy;
  }
}
