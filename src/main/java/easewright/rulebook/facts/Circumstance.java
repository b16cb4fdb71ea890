package easewright.rulebook.facts;

/** Something about the wearing, e.g. "nursing" or "high-impact". */
public record Circumstance(String id) {}
