package easewright.rulebook.facts;

/**
 * An adjustment tried before.
 *
 * @param outcome "better", "same" or "worse"
 * @param last whether no other change was made after it
 */
public record Earlier(String adjustment, String outcome, boolean last) {}
