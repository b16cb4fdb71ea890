package easewright.reading;

/**
 * A stretch of a text.
 *
 * @param from index of its first character (UTF-16)
 * @param to index after its last character
 */
record SentencePieces(int from, int to) {}
