package easewright.clinic;

import java.time.Instant;

/** Something written beside the rounds. What a helper writes, a wearer does not see. */
public record Note(Instant at, Round.Author by, String text) {}
