package easewright.inference;

/** Observations, trusted fully, that no hypothesis of up to two causes allows together. */
public final class ImpossibleObservations extends IllegalArgumentException {
  private static final long serialVersionUID = 1;

  ImpossibleObservations() {
    super("No hypothesis of up to two causes allows all of these observations at once.");
  }
}
