package easewright.clinic;

import java.util.List;
import java.util.Map;

/**
 * A case as insight counts it: once, whatever number of rounds it has. Pattern, size and cause are
 * of its newest round that named a cause, or of its newest round if none did; signs are of all its
 * rounds. Rounds with a red flag are left out of all that.
 *
 * @param redFlag whether any round had one
 * @param seenOtherwise whether there is a round without one; if not, nothing else is told
 * @param sheet id of the pattern sheet, or null
 * @param sizeCut the size cut, or null
 * @param cause id of the likeliest cause, or null
 * @param cloth the stretch class of the main cloth as tested, or null
 * @param choices the option taken of each choice, by the choice's id
 * @param signs ids of the signs reported present in any round, each once
 */
record CountedRound(
    boolean redFlag,
    boolean seenOtherwise,
    String sheet,
    String sizeCut,
    String cause,
    String cloth,
    Map<String, String> choices,
    List<String> signs) {}
