package easewright.rulebook.facts;

/** An adjustment tried before; outcome is "better", "same" or "worse". */
public record Earlier(String adjustment, String outcome) {}
