package easewright.handbook;

import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.Catalog.CautionEntry;
import easewright.rulebook.Catalog.FindingEntry;
import easewright.rulebook.Parameter;
import java.util.List;

/**
 * The rules page of one name. Only one of the four entries is set.
 *
 * @param heardFor what the families are called whose fittings it is heard in; null where it is of
 *     one family alone
 * @param numbers parameters its rules compare with
 * @param showsAs signs and findings of a cause
 * @param shownBy causes of a finding
 * @param curedBy adjustments that remove a cause
 * @param worsenedBy adjustments that worsen a cause
 * @param lookAlikes causes easily confused with this one
 * @param same causes indistinguishable from this one
 */
public record RulesPage(
    String id,
    String title,
    String topic,
    String heardFor,
    CauseEntry cause,
    FindingEntry finding,
    CautionEntry caution,
    PageLink adjustment,
    PageText text,
    List<WrittenRule> rules,
    List<Number> numbers,
    List<Related> showsAs,
    List<Related> shownBy,
    List<Related> curedBy,
    List<Related> worsenedBy,
    List<PageLink> lookAlikes,
    List<PageLink> same) {

  /** A rule as written, line by line, with its names linked. */
  public record WrittenRule(
      String name, String summary, String source, String since, List<List<TextRun>> lines) {}

  /** A parameter with its unit, and what is compared with it: "band strain is below". */
  public record Number(String id, String text, Parameter parameter, List<String> compared) {}
}
