package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.fitting.Fitting;
import easewright.fitting.GarmentMeasurements;
import easewright.measure.Measures;
import easewright.measure.UnitSystem;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads a fitting from JSON and reports all its faults at once, each with a JSON Pointer (RFC
 * 6901), the problem and the remedy. Throws only {@link FaultyRequest}.
 */
public final class FittingReader {
  static final int MOST_WHY_NOT = 10;
  static final int MOST_COULD_NOT_TELL = 60;

  private final KnownFamilies families;

  /** Reads fittings of any family. */
  public FittingReader(KnownFamilies families) {
    this.families = families;
  }

  /**
   * @param known the names a request may use
   */
  public FittingReader(KnownNames known) {
    this(KnownFamilies.only(known));
  }

  /**
   * Reads one fitting.
   *
   * @throws FaultyRequest with every fault, if there is any
   */
  public Fitting read(JsonNode json) {
    return read(json, null);
  }

  /**
   * Reads one fitting.
   *
   * @param text what was read of its text; null where it has none
   * @throws TextWithoutAnswer if it has a text, and nothing to go on or to ask about
   * @throws FaultyRequest with every fault, if there is any
   */
  public Fitting read(JsonNode json, IntakeAnswer text) {
    KnownNames known = families.of(json);
    Faults faults = new Faults(known.words());
    RequestField root = new RequestField(json, faults);
    Fitting fitting = read(root, known);
    boolean asks = text != null && text.mayBeAskedBack();
    if (faults.none() && !asks && !saysAnything(fitting, known.book().measures())) {
      root.cannotBe("fault-fitting-of-nothing");
      if (text != null) {
        throw TextWithoutAnswer.ofNothing(faults.first());
      }
    }
    faults.refuse();
    return fitting;
  }

  private static Fitting read(RequestField root, KnownNames known) {
    root.fields(
        "units",
        FamilyNames.FIELD,
        "body",
        "measuredBy",
        "pattern",
        "sizeCut",
        "sizeSystem",
        "choices",
        "design",
        "garment",
        "cloth",
        "elastic",
        "making",
        "signs",
        "fine",
        "trials",
        "earlier",
        "circumstances",
        "whyNot",
        "asksAbout",
        "asksWhatToDo",
        "couldNotTell",
        WordsToReview.FIELD,
        Struck.FIELD,
        "asked",
        "nickname",
        "voice",
        "opening",
        "closing");
    List.of("nickname", "opening", "closing").forEach(line -> root.at(line).text());
    root.at("voice").oneOf(List.of("warm", "plain"));
    WordsToReview.check(root.at(WordsToReview.FIELD));
    Struck.check(root.at(Struck.FIELD));
    root.at("asked").oneOf(known.signs());
    UnitSystem units = units(root);
    if (root.at("sizeSystem").isWritten() && !known.book().measures().hasSizes()) {
      root.at("sizeSystem").cannotBe("fault-family-without-sizes");
    }
    BodyReader body = new BodyReader(root.at("body"), root.at("measuredBy"), known);
    PatternReader pattern =
        new PatternReader(
            root.at("pattern"),
            root.at("sizeCut"),
            root.at("sizeSystem"),
            root.at("choices"),
            known.sheets());
    TriedReader tried = new TriedReader(known, pattern.sheet(), pattern.region());
    tried.readEarlier(root.at("earlier"));
    return new Fitting(
        units,
        known.families().read(root, pattern.sheet()),
        body.measurements(),
        body.how(),
        pattern.sheet(),
        pattern.sizeCut(),
        pattern.sizeSystem(),
        pattern.choices(),
        DesignReader.read(root.at("design"), root.at("pattern").isWritten()),
        ToileReader.read(root.at("garment"), known.book().measures()),
        MaterialsReader.cloths(root.at("cloth")),
        MaterialsReader.elastic(root.at("elastic")),
        MaterialsReader.making(root.at("making")),
        new SignsReader(known).read(root.at("signs")),
        once(root.at("fine"), known.areas().size(), known.areas(), "area"),
        tried.trials(root.at("trials")),
        tried.adjustments(),
        tried.sizes(),
        CircumstancesReader.read(root.at("circumstances")),
        once(root.at("whyNot"), MOST_WHY_NOT, known.causes(), "cause"),
        once(root.at("asksAbout"), MOST_WHY_NOT, known.adjustments(), "adjustment"),
        root.at("asksWhatToDo").flag(),
        once(root.at("couldNotTell"), MOST_COULD_NOT_TELL, known.signs(), "sign"));
  }

  /** The units to answer in: those requested, otherwise those of the first length. */
  static UnitSystem units(RequestField root) {
    String units = root.at("units").oneOf(List.of("metric", "imperial"));
    return units == null
        ? FirstLength.system(root.node()).orElse(UnitSystem.METRIC)
        : units.equals("metric") ? UnitSystem.METRIC : UnitSystem.IMPERIAL;
  }

  static List<String> once(RequestField list, int most, Collection<String> names, String what) {
    Set<String> ids = new LinkedHashSet<>();
    for (RequestField spot : list.items(most)) {
      String id = spot.oneOf(names);
      if (id != null && !ids.add(id)) {
        spot.cannotBe("fault-named-twice", "what", what);
      }
    }
    return List.copyOf(ids);
  }

  /** With less than this every answer would be a guess. */
  private static boolean saysAnything(Fitting fitting, Measures measures) {
    return lengths(fitting, measures) >= 2
        || !fitting.signs().isEmpty()
        || !fitting.fine().isEmpty()
        || !fitting.trials().isEmpty()
        || !fitting.earlier().isEmpty()
        || !fitting.earlierSizes().isEmpty()
        || !fitting.cloths().isEmpty()
        || fitting.elastic() != null
        || fitting.making().seamAllowanceSewn() != null
        || !fitting.circumstances().ids().isEmpty()
        || fitting.circumstances().monthsSinceOperation() != null;
  }

  /** How many lengths of body and toile are given. */
  private static long lengths(Fitting fitting, Measures measures) {
    GarmentMeasurements garment = fitting.garment();
    Stream<Object> edges =
        garment.edges().stream()
            .flatMap(
                edge ->
                    Stream.of(edge.length(), edge.elastic() == null ? null : edge.elastic().cut()));
    return fitting.body().byName().size()
        + measures.garment().stream().filter(one -> garment.named(one.id()) != null).count()
        + edges.filter(Objects::nonNull).count();
  }
}
