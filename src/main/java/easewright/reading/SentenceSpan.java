package easewright.reading;

/**
 * A sentence of a text, by its place.
 *
 * @param from index of its first character (UTF-16)
 * @param to index after its last character
 */
record SentenceSpan(int from, int to) {}
