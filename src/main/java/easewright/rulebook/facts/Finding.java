package easewright.rulebook.facts;

/**
 * A judgement some rule has stated: the finding holds, or it does not. Unjudged ones are absent.
 */
public record Finding(String id, boolean holds) {}
