package easewright.rulebook;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Everything the rule book has a name for, with what is said about it. Ids are unique over signs
 * and findings together, since a cause shows as either.
 *
 * @param practice how the trade works, whatever the garment
 * @param folders id of each entry, reasons aside, to whose it is: a family's id or a shared folder
 */
public record Catalog(
    Map<String, SignEntry> signs,
    Map<String, CauseEntry> causes,
    Map<String, FindingEntry> findings,
    Map<String, AdjustmentEntry> adjustments,
    Map<String, CautionEntry> cautions,
    Map<String, ReasonEntry> reasons,
    Practice practice,
    Map<String, String> folders) {

  /** Anything with an id and a name. */
  public interface Entry {
    String id();

    String name();
  }

  /**
   * Something seen or felt on the body.
   *
   * @param where places it can be at
   * @param look postures and moments to look
   * @param degrees "slight", "clear", "strong" to a description a wearer can apply
   * @param amount what is measured, in full, or null when it cannot be measured
   * @param perSide true when its amount is that of one side, so that an amount given at two places
   *     is the same on either
   * @param measures amount methods that its amount answers, or null
   * @param effort word for the effort of finding out
   * @param withoutFault word for how often it shows with nothing wrong
   * @param redFlag true when it stops all tightening advice
   * @param slack true when its amount is length that hangs loose, so that taking it up in full
   *     brings the garment to the body and no closer
   * @param noPhoto true when a photo would not show it, or would show more than the garment
   * @param answeredBy figures and findings that decide it from numbers, and signs that tell it
   *     where they are seen on one side only, so that it is not asked about then, or null
   * @param decides look-alike causes that it tells apart by the trade's own test, or null
   * @param proves adjustments that it is itself a trial of, held by hand, or null
   * @param usual parameter with what its amount measures with nothing wrong, or null
   * @param fact true when anybody can see or measure it at a table, so that a report of it is
   *     hardly ever mistaken
   * @param of whose it is, a family or a shared folder, where its file is another's; else null
   */
  public record SignEntry(
      String id,
      String name,
      String ask,
      String check,
      List<String> where,
      boolean sided,
      List<String> look,
      Map<String, String> degrees,
      String amount,
      boolean perSide,
      List<String> measures,
      String effort,
      String withoutFault,
      String source,
      List<String> phrases,
      String isNot,
      boolean redFlag,
      boolean slack,
      boolean noPhoto,
      List<String> answeredBy,
      List<String> decides,
      List<String> proves,
      String usual,
      boolean fact,
      String of)
      implements Entry {}

  /**
   * What is wrong underneath.
   *
   * @param stage place in the order of work
   * @param prior word for how common it is
   * @param priorSource where that word comes from, or "judgement"
   */
  public record CauseEntry(
      String id,
      String name,
      String says,
      String area,
      String stage,
      String prior,
      String priorWhy,
      String priorSource,
      List<String> lookAlikes,
      List<String> indistinguishableFrom,
      String source)
      implements Entry {}

  /** A judgement from numbers, with a sentence for either outcome. */
  public record FindingEntry(
      String id,
      String name,
      String says,
      String saysNot,
      String withoutFault,
      String figure,
      String source)
      implements Entry {}

  /**
   * A change to pattern, cutting, cloth, sewing or wearing.
   *
   * @param does one sentence; may hold the blanks {amount}, {each}, {edges}, {place}
   * @param tightens true for anything that makes the garment closer, firmer or smaller, or may
   * @param method amount method
   * @param perSide whether its amount is that of one side, made alike on the other
   * @param at edges and lines of a pattern sheet, best first
   * @param alsoAt lines of matching pieces that must change by the same whole amount, or null
   * @param atElastic whether it is made only at lines to which the pattern sews elastic
   * @param limit parameter with the largest amount by this change, or null
   * @param beyond the adjustment named above the limit; null without a limit
   * @param takesOver whether that one mends the same fault, so that it is offered in place of this
   *     one; if not, this one is offered up to the limit, and that one is named for the rest
   * @param cut what it does to what is cut
   * @param givesBack adjustments that it undoes, or null; of one that helped and went too far, half
   *     is undone
   * @param firstStep degree to the amount to try when nothing was measured
   * @param of whose it is, a family or a shared folder, where its file is another's; else null
   */
  public record AdjustmentEntry(
      String id,
      String name,
      String does,
      String stage,
      boolean tightens,
      String method,
      boolean perSide,
      List<String> at,
      List<String> alsoAt,
      boolean atElastic,
      String effort,
      String undo,
      CutChange cut,
      List<String> steps,
      String check,
      List<String> sideEffects,
      List<String> givesBack,
      String why,
      String limit,
      String beyond,
      boolean takesOver,
      List<String> declineIf,
      Map<String, String> firstStep,
      String source,
      String of)
      implements Entry {}

  /**
   * What an adjustment does to what is cut.
   *
   * @param way "take", "add", "reshape", "shorter", "longer", "swap", "cloth" or "nothing"
   * @param measures finished measurements that change with it, besides girths that the seam
   *     crosses; or null
   * @param twice whether those change by two amounts, since it is told for one side
   */
  public record CutChange(String way, List<String> measures, boolean twice) {}

  /**
   * What may hurt and whom to ask. Only a danger needs to say what to do, how soon and what after.
   *
   * @param urgency "stop", which is a danger, "care" or "note"
   * @param doNow what to do now, one to three short imperative sentences; {@code do} in the catalog
   * @param soon how soon to ask: a word of {@link OrderOfWork#soon}
   * @param after what to tell afterwards, or when the sewing goes on
   * @param garment whether wearing the garment bears on it, so that it is left off
   * @param fitAfter whether a change that makes nothing closer is named for later; null is no
   */
  public record CautionEntry(
      String id,
      String name,
      String says,
      String who,
      String urgency,
      String source,
      @JsonProperty("do") String doNow,
      String soon,
      String after,
      Boolean garment,
      Boolean fitAfter)
      implements Entry {
    public CautionEntry {
      if ("stop".equals(urgency)
          && (blank(doNow) || soon == null || blank(after) || garment == null)) {
        throw new RuleBookFault(
            "Caution " + id + " is of urgency stop; it needs do, soon, after and garment.");
      }
    }

    private static boolean blank(String text) {
      return text == null || text.isBlank();
    }
  }

  /** A reason to hold an adjustment back. */
  public record ReasonEntry(String id, String name, String says) implements Entry {}

  /** Name of a sign or finding, or of any other entry; the id itself when unknown. */
  public String nameOf(String id) {
    Entry entry = signs.get(id);
    entry = entry == null ? findings.get(id) : entry;
    entry = entry == null ? causes.get(id) : entry;
    entry = entry == null ? adjustments.get(id) : entry;
    entry = entry == null ? cautions.get(id) : entry;
    entry = entry == null ? reasons.get(id) : entry;
    return entry == null ? id : entry.name();
  }

  /** The id of a name in words: "band too long" is band-too-long. */
  public static String idOf(String name) {
    return RuleReader.id(name);
  }

  static <E extends Entry> Map<String, E> byId(List<E> entries) {
    List<String> twice = new ArrayList<>();
    Map<String, E> map =
        entries.stream()
            .collect(
                Collectors.toMap(
                    Entry::id,
                    Function.identity(),
                    (a, b) -> {
                      twice.add(a.id());
                      return a;
                    },
                    java.util.LinkedHashMap::new));
    if (!twice.isEmpty()) {
      throw new RuleBookFault("These ids stand twice in the catalog: " + twice);
    }
    return map;
  }
}
