package easewright.clinic;

import java.util.List;

/** A case with all that happened in it, oldest first. */
public record Story(Case current, List<Round> rounds, List<Note> notes) {}
