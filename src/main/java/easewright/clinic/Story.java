package easewright.clinic;

import java.util.List;

/** A case with its full history, oldest first. */
public record Story(Case current, List<Round> rounds, List<Note> notes, List<Photo> photos) {}
