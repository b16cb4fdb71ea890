package easewright.rulebook.facts;

/**
 * Stands in for every fitting at once. Present only while the book collects what its rules say "in
 * any fitting"; a request never carries it, so those rules cost a request nothing.
 */
public record AnyFitting() {}
