package easewright.deadline;

/** Work was aborted because it exceeded its time limit. */
public final class DeadlinePassed extends RuntimeException {
  private static final long serialVersionUID = 1;

  public DeadlinePassed() {
    super(null, null, false, false);
  }
}
