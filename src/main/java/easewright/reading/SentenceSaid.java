package easewright.reading;

import java.util.Map;

/**
 * A sentence, or a part of a very long one, and what it says.
 *
 * @param from index of its first character in the text (UTF-16)
 * @param to index after its last character
 * @param said by the id of the sign; every sign the model knows
 */
public record SentenceSaid(int from, int to, Map<String, Said> said) {}
