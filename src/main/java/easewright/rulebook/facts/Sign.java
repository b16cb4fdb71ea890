package easewright.rulebook.facts;

/**
 * A sign the wearer reports or denies.
 *
 * @param present true when reported, false when denied
 * @param place kebab-case place, or "" when not said
 * @param oneSided true when it shows on the left or the right only
 */
public record Sign(String id, boolean present, String place, boolean oneSided) {}
