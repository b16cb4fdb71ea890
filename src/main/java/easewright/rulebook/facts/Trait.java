package easewright.rulebook.facts;

/** A property of the pattern as described by its sheet, e.g. "compression" or "lined". */
public record Trait(String id) {}
