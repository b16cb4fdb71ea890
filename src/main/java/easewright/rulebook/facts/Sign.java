package easewright.rulebook.facts;

import java.util.List;

/**
 * A sign the wearer reports or denies.
 *
 * @param present true when reported, false when denied
 * @param place kebab-case place, or "" when not said
 * @param oneSided true when it shows on the left or the right only
 * @param times when it shows, such as "after-an-hour"; empty when not said
 */
public record Sign(
    String id, boolean present, String place, boolean oneSided, List<String> times) {}
