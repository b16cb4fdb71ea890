package easewright.reading;

/**
 * What a sentence says of a sign, as probabilities; what is left to 1 is that it says nothing of
 * it.
 *
 * @param reported that it is so now
 * @param denied that it is not so
 * @param doubtful that it is asked, feared, over, or said of another garment or person
 */
public record Said(double reported, double denied, double doubtful) {}
