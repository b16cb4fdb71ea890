package easewright.handbook;

import easewright.handbook.RulesPage.Number;
import easewright.handbook.RulesPage.WrittenRule;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Family;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RulePage;
import easewright.rulebook.RuleStatement.Kind;
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
  private final RuleMentions mentions;
  private final HandbookIndex index;
  private final Pictures pictures;

  public Handbook(RuleBookSource source) {
    this.source = source;
    this.links = new Links(source);
    this.mentions = new RuleMentions(source.rules());
    this.index = HandbookIndex.of(source, links);
    this.pictures = new Pictures(source);
  }

  /** The edition of the rule book these pages are from. */
  public RuleBookSource source() {
    return source;
  }

  /** Everything with a page, in its sections. */
  public HandbookIndex index() {
    return index;
  }

  /**
   * The drawing of a sign; without marks if the book has none.
   *
   * @param family on whose garment, as its id or by name; null for whose sign it is
   * @param sheet the pattern sheet whose garment is drawn, or null
   */
  public Optional<Illustration> signDrawing(String id, String family, String sheet) {
    return pictures.sign(id, family, sheet);
  }

  /** The same for an adjustment. */
  public Optional<Illustration> changeDrawing(String id, String family, String sheet) {
    return pictures.change(id, family, sheet);
  }

  /**
   * The garment of a family with its places.
   *
   * @param family its id, or what such garments are called; null for the usual one
   * @return empty if there is no such family, or no drawing of its garment
   */
  public Optional<GarmentDrawing> garment(String family) {
    return pictures.garment(family);
  }

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
        heardFor(written.get(0).folder()),
        cause,
        catalog.findings().get(id),
        catalog.cautions().get(id),
        catalog.adjustments().containsKey(id) ? links.of(id) : null,
        PageText.of(page, links),
        written.stream().map(this::written).toList(),
        numbers(written),
        mentions.of(Kind.SHOWS, id, links),
        mentions.about(Kind.SHOWS, id, links),
        mentions.about(Kind.CURES, id, links),
        mentions.about(Kind.WORSENS, id, links),
        cause == null ? List.of() : links.of(cause.lookAlikes()),
        cause == null ? List.of() : links.of(cause.indistinguishableFrom()));
  }

  private String heardFor(String folder) {
    return source.families().containsKey(folder)
        ? null
        : source.families().values().stream()
            .filter(family -> family.hears(folder))
            .map(Family::name)
            .collect(Collectors.joining(", "));
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
                    mentions.about(Kind.SHOWS, id, links),
                    source.catalog().adjustments().values().stream()
                        .filter(change -> contains(change.sideEffects(), id))
                        .map(change -> links.of(change.id()))
                        .toList(),
                    cautions(sign),
                    !sign.redFlag() && pictures.shows(id)));
  }

  private List<PageLink> cautions(SignEntry sign) {
    return source.rules().stream()
        .filter(rule -> source.catalog().cautions().containsKey(rule.file()))
        .filter(rule -> rule.body().contains("reports \"" + sign.name() + "\""))
        .map(RuleText::file)
        .distinct()
        .map(links::of)
        .toList();
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
        mentions.of(Kind.CURES, id, links),
        mentions.of(Kind.WORSENS, id, links),
        reasons(mentions.of(Kind.HOLDS_BACK, id, links)),
        mentions.about(Kind.REPLACES, id, links),
        mentions.of(Kind.REPLACES, id, links),
        pictures.shows(id));
  }

  /** A reason has no page; its sentence is shown instead of its name. */
  private List<Related> reasons(List<Related> heldBack) {
    Map<String, String> says =
        source.catalog().reasons().values().stream()
            .collect(Collectors.toMap(reason -> reason.name(), reason -> reason.says()));
    Function<String, String> sentence = name -> says.getOrDefault(name, name);
    return heldBack.stream()
        .map(
            one ->
                new Related(
                    new PageLink(sentence.apply(one.to().name()), null), one.word(), one.special()))
        .toList();
  }
}
