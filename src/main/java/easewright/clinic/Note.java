package easewright.clinic;

import java.time.Instant;

/** A note outside the rounds. A wearer does not see helpers' notes. */
public record Note(Instant at, Round.Author by, String text) {}
