package easewright.reading;

/**
 * A change that a text tells of as tried or made, with what it did.
 *
 * @param change its id
 * @param sure how probably the text tells of this change, or of one that comes to the same
 * @param outcome "right", "better", "same" or "worse"
 * @param told the sentence that tells of it
 * @param last the last sentence that goes on about it; may be the same
 */
public record TrialSaid(
    String change, double sure, String outcome, SentenceSaid told, SentenceSaid last) {}
