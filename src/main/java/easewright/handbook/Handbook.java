package easewright.handbook;

import easewright.handbook.Sayings.Kind;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.Catalog.CautionEntry;
import easewright.rulebook.Catalog.FindingEntry;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Parameter;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RulePage;
import easewright.rulebook.RuleText;
import easewright.rulebook.RuleText.Comparison;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The pages of one edition of the rule book. Immutable; an unknown id gives no page. */
public final class Handbook {
  private final RuleBookSource source;
  private final Links links;
  private final Sayings sayings;
  private final HandbookIndex index;

  public Handbook(RuleBookSource source) {
    this.source = source;
    this.links = new Links(source);
    this.sayings = new Sayings(source.rules());
    this.index = HandbookIndex.of(source, links);
  }

  /** The edition of the rule book these pages are of. */
  public RuleBookSource source() {
    return source;
  }

  /** Everything with a page, in its sections. */
  public HandbookIndex index() {
    return index;
  }

  /**
   * A page of the rules on one name. Of the four entries the one it is a page of is given.
   *
   * @param numbers parameters its rules compare with
   * @param showsAs signs and findings of a cause
   * @param shownBy causes of a finding
   * @param curedBy adjustments that take a cause away
   * @param worsenedBy adjustments that worsen a cause
   * @param lookAlikes causes easily taken for this one
   * @param same causes that can't be told apart from this one
   */
  public record RulesPage(
      String id,
      String title,
      String topic,
      CauseEntry cause,
      FindingEntry finding,
      CautionEntry caution,
      Link adjustment,
      PageText text,
      List<WrittenRule> rules,
      List<Number> numbers,
      List<Related> showsAs,
      List<Related> shownBy,
      List<Related> curedBy,
      List<Related> worsenedBy,
      List<Link> lookAlikes,
      List<Link> same) {}

  /** A rule as written, line by line, with its names linked. */
  public record WrittenRule(
      String name, String summary, String source, String since, List<List<Piece>> lines) {}

  /** A parameter with its unit, and what is compared with it: "band strain is below". */
  public record Number(String id, String text, Parameter parameter, List<String> compared) {}

  /** A sign's page. */
  public record SignPage(
      SignEntry sign, List<Link> places, List<Related> shownBy, List<Link> broughtBy) {}

  /**
   * An adjustment's page; the fields are the catalog's, blanks set apart.
   *
   * @param rules its page of rules, or null
   * @param limit the parameter with its largest amount, or null
   * @param heldBack reasons to hold it back, each with its situation
   * @param gives what takes its place, and when
   * @param takes whose place it takes, and when
   */
  public record AdjustmentPage(
      AdjustmentEntry adjustment,
      List<Piece> does,
      List<List<Piece>> steps,
      List<Link> places,
      List<Link> alsoPlaces,
      List<Link> sideEffects,
      Number limit,
      Link beyond,
      String rules,
      List<Related> cures,
      List<Related> worsens,
      List<Related> heldBack,
      List<Related> gives,
      List<Related> takes) {}

  /** The page of a rule file. */
  public Optional<RulesPage> rules(String id) {
    return Optional.ofNullable(source.pages().get(id)).map(this::rules);
  }

  private RulesPage rules(RulePage page) {
    String id = page.id();
    Catalog catalog = source.catalog();
    CauseEntry cause = catalog.causes().get(id);
    List<RuleText> written =
        source.rules().stream().filter(rule -> rule.file().equals(id)).toList();
    return new RulesPage(
        id,
        page.title(),
        page.topic(),
        cause,
        catalog.findings().get(id),
        catalog.cautions().get(id),
        catalog.adjustments().containsKey(id) ? links.of(id) : null,
        PageText.of(page, links),
        written.stream().map(this::written).toList(),
        numbers(written),
        sayings.of(Kind.SHOWS, id, links),
        sayings.about(Kind.SHOWS, id, links),
        sayings.about(Kind.CURES, id, links),
        sayings.about(Kind.WORSENS, id, links),
        cause == null ? List.of() : links.of(cause.lookAlikes()),
        cause == null ? List.of() : links.of(cause.indistinguishableFrom()));
  }

  private WrittenRule written(RuleText rule) {
    return new WrittenRule(
        rule.name(),
        rule.summary(),
        rule.source(),
        rule.since(),
        rule.body().lines().map(links::sentence).toList());
  }

  private List<Number> numbers(List<RuleText> rules) {
    Map<String, List<String>> compared =
        rules.stream()
            .flatMap(rule -> rule.comparisons().stream())
            .collect(
                Collectors.groupingBy(
                    Comparison::parameter,
                    LinkedHashMap::new,
                    Collectors.mapping(Handbook::comparison, Collectors.toList())));
    return compared.entrySet().stream()
        .flatMap(one -> number(one.getKey(), one.getValue()).stream())
        .toList();
  }

  private static String comparison(Comparison comparison) {
    return comparison.figure().replace('-', ' ') + " is " + comparison.how();
  }

  private Optional<Number> number(String id, List<String> compared) {
    return Optional.ofNullable(id)
        .map(source.parameters()::get)
        .map(
            parameter ->
                new Number(
                    id,
                    Stream.of(parameter.text(), parameter.unit())
                        .filter(part -> part != null)
                        .collect(Collectors.joining(" ")),
                    parameter,
                    compared.stream().distinct().toList()));
  }

  /** The page of a sign. */
  public Optional<SignPage> sign(String id) {
    return Optional.ofNullable(source.catalog().signs().get(id))
        .map(
            sign ->
                new SignPage(
                    sign,
                    Links.places(sign.where()),
                    sayings.about(Kind.SHOWS, id, links),
                    source.catalog().adjustments().values().stream()
                        .filter(change -> contains(change.sideEffects(), id))
                        .map(change -> links.of(change.id()))
                        .toList()));
  }

  private static boolean contains(List<String> ids, String id) {
    return ids != null && ids.contains(id);
  }

  /** The page of an adjustment. */
  public Optional<AdjustmentPage> adjustment(String id) {
    return Optional.ofNullable(source.catalog().adjustments().get(id)).map(this::adjustment);
  }

  private AdjustmentPage adjustment(AdjustmentEntry change) {
    String id = change.id();
    return new AdjustmentPage(
        change,
        Links.blanks(change.does()),
        change.steps().stream().map(Links::blanks).toList(),
        Links.places(change.at()),
        Links.places(change.alsoAt()),
        links.of(change.sideEffects()),
        number(change.limit(), List.of()).orElse(null),
        change.beyond() == null ? null : links.of(change.beyond()),
        source.pages().containsKey(id) ? "/rules/" + id : null,
        sayings.of(Kind.CURES, id, links),
        sayings.of(Kind.WORSENS, id, links),
        reasons(sayings.of(Kind.HOLDS_BACK, id, links)),
        sayings.about(Kind.REPLACES, id, links),
        sayings.of(Kind.REPLACES, id, links));
  }

  /** A reason has no page of its own; its sentence is shown in place of its name. */
  private List<Related> reasons(List<Related> heldBack) {
    Map<String, String> says =
        source.catalog().reasons().values().stream()
            .collect(Collectors.toMap(reason -> reason.name(), reason -> reason.says()));
    Function<String, String> sentence = name -> says.getOrDefault(name, name);
    return heldBack.stream()
        .map(
            one ->
                new Related(
                    new Link(sentence.apply(one.to().name()), null), one.word(), one.special()))
        .toList();
  }
}
