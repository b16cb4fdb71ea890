package easewright.rulebook.facts;

/** A cause worth mentioning after weighing; likely when its probability is high. */
public record InPlay(String cause, boolean likely) {}
