package easewright.clinic;

import java.time.Instant;

/**
 * A photo of a round, without its pixels.
 *
 * @param id unique in the store
 * @param round number of the round it shows
 * @param by who added it
 * @param alt what it shows, in a line, for whoever cannot see it
 * @param width of the large copy, pixels
 * @param height of the large copy, pixels
 */
public record Photo(
    String id, int round, Instant addedAt, Round.Author by, String alt, int width, int height) {}
