package easewright.rulebook.facts;

/** An adjustment about to be offered, with its amount in millimetres (0 when it has none). */
public record Proposal(String adjustment, double amountMm) {}
