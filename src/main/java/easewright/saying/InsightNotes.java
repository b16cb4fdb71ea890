package easewright.saying;

import easewright.clinic.CommonFault;
import easewright.clinic.Insight;
import easewright.clinic.Insight.By;
import easewright.clinic.Share;
import easewright.clinic.SizeRange;
import easewright.naming.KebabCase;
import easewright.pattern.PatternSheet;
import easewright.rulebook.Catalog;
import java.util.List;
import java.util.Optional;

/** Insight in the contract's form, with display names. */
public final class InsightNotes {
  private final Catalog catalog;
  private final List<PatternSheet> sheets;

  private InsightNotes(Catalog catalog, List<PatternSheet> sheets) {
    this.catalog = catalog;
    this.sheets = sheets;
  }

  /** The filter of the cases counted. */
  public record AskedNote(String pattern, String size, String cloth, String choice) {}

  /** A filter value that can be chosen. */
  public record KnownNote(String by, String value, String name, int cases) {}

  /** A part of a whole, with the share if there are enough cases. */
  public record ShareNote(int part, int whole, Double share, Double from, Double to) {
    static ShareNote of(Share share) {
      return share.tooFew()
          ? new ShareNote(share.part(), share.whole(), null, null, null)
          : new ShareNote(
              share.part(),
              share.whole(),
              rounded(share.fraction()),
              rounded(share.from()),
              rounded(share.to()));
    }

    private static double rounded(double fraction) {
      return Math.round(fraction * 1e4) / 1e4;
    }
  }

  /** Number of cases with a cause or a sign. */
  public record CountNote(String id, String name, ShareNote cases) {}

  /** Cases with something in common. */
  public record GroupNote(
      String by,
      String value,
      String name,
      int cases,
      List<CountNote> causes,
      List<CountNote> signs) {}

  /** A count at one cup, band or size. */
  public record AtSizeNote(String label, ShareNote cases, boolean inside) {}

  /** A likely fault of a pattern. */
  public record FaultNote(
      String pattern,
      String patternName,
      String cause,
      String causeName,
      String by,
      List<String> sizes,
      String end,
      ShareNote inside,
      ShareNote elsewhere,
      double chance,
      List<AtSizeNote> bySize) {}

  /** The whole insight. */
  public record InsightNote(
      AskedNote asked,
      List<KnownNote> known,
      int cases,
      int unclear,
      int redFlags,
      boolean complete,
      List<CountNote> causes,
      List<CountNote> signs,
      List<GroupNote> groups,
      List<FaultNote> faults) {}

  /** An insight with the names from the rule book and the sheets. */
  public static InsightNote of(Insight insight, Catalog catalog, List<PatternSheet> sheets) {
    InsightNotes notes = new InsightNotes(catalog, sheets);
    Insight.Asked asked = insight.asked();
    return new InsightNote(
        new AskedNote(asked.pattern(), asked.size(), asked.cloth(), asked.choice()),
        insight.known().stream().map(notes::known).toList(),
        insight.cases(),
        insight.unclear(),
        insight.redFlags(),
        insight.complete(),
        notes.counts(insight.causes()),
        notes.counts(insight.signs()),
        insight.groups().stream().map(notes::group).toList(),
        insight.faults().stream().map(notes::fault).toList());
  }

  private List<CountNote> counts(List<Insight.Count> counts) {
    return counts.stream()
        .map(
            count ->
                new CountNote(count.id(), catalog.nameOf(count.id()), ShareNote.of(count.share())))
        .toList();
  }

  private KnownNote known(Insight.Known known) {
    return new KnownNote(
        KebabCase.of(known.by()), known.value(), name(known.by(), known.value()), known.cases());
  }

  private GroupNote group(Insight.Group group) {
    return new GroupNote(
        KebabCase.of(group.by()),
        group.value(),
        name(group.by(), group.value()),
        group.cases(),
        counts(group.causes()),
        counts(group.signs()));
  }

  private String name(By by, String value) {
    return switch (by) {
      case PATTERN -> sheet(value).map(PatternSheet::name).orElse(value);
      case SIZE -> value;
      case CLOTH -> TemplateText.words(value);
      case CHOICE -> choice(value);
    };
  }

  private Optional<PatternSheet> sheet(String id) {
    return sheets.stream().filter(sheet -> sheet.id().equals(id)).findFirst();
  }

  /**
   * The name given by the first pattern that offers it; patterns use the same id for the same
   * thing.
   */
  private String choice(String value) {
    String[] parts = value.split("=", 2);
    return sheets.stream()
        .flatMap(sheet -> sheet.choice(parts[0]).stream())
        .flatMap(
            choice ->
                choice
                    .option(parts[1])
                    .map(option -> choice.name() + ": " + option.name())
                    .stream())
        .findFirst()
        .orElse(value.replace("=", ": "));
  }

  private FaultNote fault(CommonFault fault) {
    SizeRange sizes = fault.sizes();
    return new FaultNote(
        fault.sheet().id(),
        fault.sheet().name(),
        fault.cause(),
        catalog.nameOf(fault.cause()),
        KebabCase.of(sizes.of()),
        sizes.labels(),
        sizes.end().isEmpty() ? null : sizes.end(),
        ShareNote.of(fault.inside()),
        ShareNote.of(fault.elsewhere()),
        fault.chance(),
        fault.bySize().stream()
            .map(one -> new AtSizeNote(one.label(), ShareNote.of(one.share()), one.inside()))
            .toList());
  }
}
