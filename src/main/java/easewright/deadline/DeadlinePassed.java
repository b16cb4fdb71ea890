package easewright.deadline;

/** The work was given up, since it took longer than it may. */
public final class DeadlinePassed extends RuntimeException {
  private static final long serialVersionUID = 1;

  public DeadlinePassed() {
    super(null, null, false, false);
  }
}
