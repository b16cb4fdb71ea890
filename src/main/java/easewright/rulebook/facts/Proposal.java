package easewright.rulebook.facts;

/**
 * An adjustment about to be offered, with its amount in millimetres; one without an amount is not
 * among the facts.
 */
public record Proposal(String adjustment, double amountMm) {}
