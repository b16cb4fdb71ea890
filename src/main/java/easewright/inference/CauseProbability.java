package easewright.inference;

/**
 * A cause and how probable it is, alone or with another.
 *
 * @param cause id of the cause
 * @param probability 0 to 1
 */
public record CauseProbability(String cause, double probability) {}
