package easewright.clinic;

import java.util.List;
import java.util.Map;

/**
 * A case as counted by insight: once, however many rounds it has. Pattern, size and cause come from
 * its latest round that named a cause, or from its latest round if none did; signs come from all
 * its rounds. Rounds with a red flag are excluded.
 *
 * @param redFlag whether any round had one
 * @param seenOtherwise whether there is a round without one; if not, all other values are empty
 * @param sheet id of the pattern sheet, or null
 * @param sizeCut the size cut, or null
 * @param cause id of the most likely cause, or null
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
