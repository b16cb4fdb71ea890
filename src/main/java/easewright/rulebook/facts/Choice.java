package easewright.rulebook.facts;

/** An option chosen on the pattern sheet. */
public record Choice(String id, String option) {}
