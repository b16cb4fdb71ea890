package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.check.SizeQuestion;
import easewright.check.SizeQuestion.Construction;
import easewright.fitting.Circumstances;
import easewright.fitting.ClothReport;
import easewright.fitting.Design;
import easewright.fitting.ElasticReport;
import easewright.fitting.Fitting;
import easewright.fitting.GarmentMeasurements;
import easewright.fitting.Making;
import easewright.fitting.ReportedSign;
import easewright.measure.BodyMeasurements;
import easewright.measure.Measuring;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.SizeNames;
import easewright.size.LabelReading;
import easewright.size.Region;
import easewright.size.SizeLabel;
import easewright.size.SizeSystem;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Reads questions asked before cutting, and reports all their faults at once. */
public final class CheckReader {
  private final KnownFamilies families;

  /** Reads questions about any family. */
  public CheckReader(KnownFamilies families) {
    this.families = families;
  }

  /**
   * @param known the names a request may use
   */
  public CheckReader(KnownNames known) {
    this(KnownFamilies.only(known));
  }

  /**
   * Reads a question about a size.
   *
   * @throws FaultyRequest with every fault, if there is any
   */
  public SizeQuestion size(JsonNode json) {
    KnownNames known = families.of(json);
    Faults faults = new Faults(known.words());
    RequestField root = new RequestField(json, faults);
    root.fields(
        "units",
        FamilyNames.FIELD,
        "body",
        "measuredBy",
        "pattern",
        "choices",
        "system",
        "construction",
        "label",
        "circumstances",
        "signs");
    if (!known.book().measures().hasSizes()) {
      root.at(FamilyNames.FIELD).cannotBe("fault-family-without-sizes");
      faults.refuse();
    }
    BodyReader body = new BodyReader(root.at("body"), root.at("measuredBy"), known);
    PatternReader pattern = pattern(root, known);
    String system = root.at("system").oneOf(names(SizeSystem.values()));
    String construction = root.at("construction").oneOf(names(Construction.values()));
    alone(root, "system", pattern.sheet());
    alone(root, "construction", pattern.sheet());
    RequestField label = root.at("label").fields("text", "printedIn");
    List<String> onSheet = onSheet(label, pattern.sheet());
    List<SizeLabel> printed = label(label, !onSheet.isEmpty());
    SizeQuestion question =
        new SizeQuestion(
            fitting(
                root,
                known,
                body.measurements(),
                body.how(),
                pattern,
                Map.of(),
                null,
                new SignsReader(known).read(root.at("signs"))),
            body.readings(),
            system == null ? SizeSystem.EN : SizeSystem.valueOf(upper(system)),
            construction == null ? null : Construction.valueOf(upper(construction)),
            printed,
            region(label, printed, !onSheet.isEmpty()),
            onSheet);
    if (faults.none() && !question.hasGirths() && printed.isEmpty() && onSheet.isEmpty()) {
      root.cannotBe("fault-size-of-nothing");
    }
    faults.refuse();
    return question;
  }

  /**
   * Reads a question about cloths and elastic.
   *
   * @throws FaultyRequest with every fault, if there is any
   */
  public Fitting cloth(JsonNode json) {
    KnownNames known = families.of(json);
    Faults faults = new Faults(known.words());
    RequestField root = new RequestField(json, faults);
    root.fields(
        "units",
        FamilyNames.FIELD,
        "body",
        "measuredBy",
        "pattern",
        "choices",
        "cloth",
        "elastic",
        "circumstances",
        "signs");
    BodyReader body = new BodyReader(root.at("body"), root.at("measuredBy"), known);
    Fitting fitting =
        fitting(
            root,
            known,
            body.measurements(),
            body.how(),
            pattern(root, known),
            MaterialsReader.cloths(root.at("cloth")),
            MaterialsReader.elastic(root.at("elastic")),
            new SignsReader(known).read(root.at("signs")));
    boolean tested = fitting.cloths().values().stream().anyMatch(cloth -> cloth.test() != null);
    if (faults.none()
        && !tested
        && (fitting.elastic() == null || fitting.elastic().test() == null)) {
      root.cannotBe("fault-cloth-of-nothing");
    }
    faults.refuse();
    return fitting;
  }

  private static Fitting fitting(
      RequestField root,
      KnownNames known,
      BodyMeasurements body,
      Map<String, List<Measuring>> how,
      PatternReader pattern,
      Map<String, ClothReport> cloths,
      ElasticReport elastic,
      List<ReportedSign> signs) {
    Circumstances circumstances = CircumstancesReader.read(root.at("circumstances"));
    return new Fitting(
        FittingReader.units(root),
        known.families().read(root, pattern.sheet()),
        body,
        how,
        pattern.sheet(),
        null,
        null,
        pattern.choices(),
        Design.NONE,
        GarmentMeasurements.NONE,
        cloths,
        elastic,
        new Making(null, null, null),
        signs,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        circumstances,
        List.of(),
        List.of(),
        false,
        List.of());
  }

  private static PatternReader pattern(RequestField root, KnownNames known) {
    return new PatternReader(
        root.at("pattern"),
        root.at("sizeCut"),
        root.at("sizeSystem"),
        root.at("choices"),
        known.sheets());
  }

  private static void alone(RequestField root, String name, PatternSheet sheet) {
    if (sheet != null && root.at(name).isWritten()) {
      root.at(name).cannotBe("fault-said-by-the-sheet");
    }
  }

  /** The sizes of the sheet that the label names. */
  private static List<String> onSheet(RequestField label, PatternSheet sheet) {
    String text = label.at("text").node().textValue();
    String printedIn = label.at("printedIn").node().textValue();
    return sheet == null || text == null
        ? List.of()
        : SizeNames.find(sheet, text, Region.named(String.valueOf(printedIn)).orElse(null)).stream()
            .map(PatternSize::name)
            .toList();
  }

  private static List<SizeLabel> label(RequestField spot, boolean onSheet) {
    if (!spot.isWritten()) {
      return List.of();
    }
    if (!spot.at("text").isWritten()) {
      spot.at("text").needs("fault-label-missing");
    }
    String text = spot.at("text").text();
    if (text == null) {
      return List.of();
    }
    List<SizeLabel> label = SizeLabel.parse(text);
    if (label.isEmpty() && !onSheet) {
      spot.at("text").cannotBeRead("fault-no-label");
    }
    return label;
  }

  private static Region region(RequestField spot, List<SizeLabel> label, boolean onSheet) {
    String name = spot.at("printedIn").oneOf(Region.wireNames());
    Region region = name == null ? null : Region.named(name).orElseThrow();
    if (!label.isEmpty() && !onSheet && LabelReading.of(label, region).isEmpty()) {
      spot.at("text")
          .cannotBe(region == null ? "fault-label-of-no-region" : "fault-label-of-another-region");
    }
    return region;
  }

  private static List<String> names(Enum<?>[] values) {
    return Arrays.stream(values).map(value -> value.name().toLowerCase(Locale.ROOT)).toList();
  }

  private static String upper(String name) {
    return name.toUpperCase(Locale.ROOT);
  }
}
