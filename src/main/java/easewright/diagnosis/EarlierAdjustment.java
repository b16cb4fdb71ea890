package easewright.diagnosis;

import easewright.measure.Length;

/**
 * A change made before this try-on.
 *
 * @param adjustment its id in the catalog
 * @param amount by how much, in full; null when not said
 * @param outcome "better", "same" or "worse"; null when not said
 */
public record EarlierAdjustment(String adjustment, Length amount, String outcome) {}
