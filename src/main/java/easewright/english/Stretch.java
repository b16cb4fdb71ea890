package easewright.english;

/**
 * Words from one to another, both included.
 *
 * @param first index of the first word
 * @param last index of the last word
 */
public record Stretch(int first, int last) {}
