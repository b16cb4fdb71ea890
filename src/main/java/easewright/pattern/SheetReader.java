package easewright.pattern;

import easewright.cloth.ClothNeed;
import easewright.cloth.StretchUse;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Converts a structurally valid sheet into records; reports invalid quantities and rejected values
 * as faults.
 */
final class SheetReader {

  private SheetReader() {}

  static PatternSheet read(SheetNode sheet) {
    double allowanceMm = sheet.mm("seamAllowance");
    List<PatternSize> sizes = SizeReader.read(sheet.at("sizes"));
    return new PatternSheet(
        sheet.text("id"),
        sheet.text("name"),
        sheet.text("family"),
        sheet.text("summary"),
        sheet.text("construction"),
        ConstructionType.valueOf(upper(sheet.text("constructionType"))),
        SupportClass.valueOf(upper(sheet.text("supportClass"))),
        allowanceMm,
        sizes,
        sheet.each("choices").stream().map(SheetReader::choice).toList(),
        pieces(sheet, allowanceMm, new BoxReader(sizes, sheet.at("sizes").has("grid"))),
        cloth(sheet),
        sheet.each("trims").stream().flatMap(node -> trim(node).stream()).toList());
  }

  private static SheetChoice choice(SheetNode node) {
    List<SheetChoice.Option> options =
        node.each("options").stream().map(SheetReader::option).toList();
    boolean any = node.text("pick").equals("any");
    if (any && options.size() > SheetChoice.MOST_PARTS) {
      node.at("options")
          .fault("too-many-options", "count", options.size(), "most", SheetChoice.MOST_PARTS);
      any = false;
    }
    return new SheetChoice(
        node.text("id"),
        node.text("name"),
        node.text("ask"),
        node.text("default"),
        any ? SheetChoice.combinations(options) : options);
  }

  private static SheetChoice.Option option(SheetNode node) {
    Map<String, Double> changesMm = new HashMap<>();
    node.fields("changes")
        .forEach((key, value) -> changesMm.put(key, value.quantity(SheetQuantities::signedMm)));
    return new SheetChoice.Option(
        node.text("id"),
        node.text("name"),
        node.texts("requires").stream().map(OptionRef::parse).toList(),
        node.texts("excludes").stream().map(OptionRef::parse).toList(),
        changesMm);
  }

  private static List<Piece> pieces(SheetNode sheet, double allowanceMm, BoxReader boxes) {
    // A lining inherits lines and edges from the piece it follows, so those are read first.
    Map<String, SheetNode> byId = new HashMap<>();
    sheet.each("pieces").forEach(node -> byId.putIfAbsent(node.text("id"), node));
    List<Piece> pieces = new ArrayList<>();
    for (SheetNode node : sheet.each("pieces")) {
      SheetNode drawn = node.maybeText("follows").map(byId::get).orElse(node);
      piece(node, drawn, allowanceMm, boxes).ifPresent(pieces::add);
    }
    return pieces;
  }

  private static Optional<Piece> piece(
      SheetNode node, SheetNode drawn, double allowanceMm, BoxReader boxes) {
    Map<String, List<Piece.Corner>> outlines = outlines(node);
    // A lining has its main piece's paper, unless it states its own.
    SheetNode paper = node.has("box") || node.has("outlines") ? node : drawn;
    Map<String, List<Piece.Corner>> paperOutlines = paper == node ? outlines : outlines(paper);
    StretchDirection stretch =
        StretchDirection.valueOf(upper(node.maybeText("stretch").orElse("around")));
    Map<String, Double> smaller = new HashMap<>();
    node.fields("smaller")
        .forEach((edge, value) -> smaller.put(edge, value.quantity(SheetQuantities::mm)));
    List<Edge> edges = drawn.each("edges").stream().flatMap(edge -> edge(edge).stream()).toList();
    return node.made(
        () ->
            new Piece(
                node.text("id"),
                node.text("name"),
                node.text("role"),
                node.json().path("count").asInt(1),
                node.json().path("onFold").asBoolean(),
                node.json().path("mirrored").asBoolean(),
                Layer.valueOf(upper(node.text("layer"))),
                node.maybeText("follows"),
                when(node),
                stretch,
                grain(node, stretch),
                node.maybe("seamAllowance", SheetQuantities::mm).orElse(allowanceMm),
                drawn.texts("lines"),
                drawn.texts("lengthenAt"),
                edges,
                smaller,
                leftOut(node),
                boxes.read(paper, paperOutlines),
                outlines),
        "piece");
  }

  // Most knits stretch most across their length.
  private static Grain grain(SheetNode node, StretchDirection stretch) {
    return node.maybeText("grain")
        .map(text -> Grain.valueOf(upper(text)))
        .orElse(stretch == StretchDirection.AROUND ? Grain.ALONG : Grain.AROUND);
  }

  private static Optional<String> leftOut(SheetNode node) {
    return node.json().path("optional").asBoolean() ? node.maybeText("leftOut") : Optional.empty();
  }

  private static Optional<Edge> edge(SheetNode node) {
    double part = node.maybe("part", SheetQuantities::fraction).orElse(1.0);
    return node.made(
        () ->
            new Edge(
                node.text("id"),
                node.maybeText("length"),
                part,
                node.texts("sewnTo").stream().map(Edge.Ref::parse).toList(),
                node.maybeText("finish"),
                node.texts("crosses"),
                node.json().path("notches").asInt()),
        "edge-part");
  }

  private static Map<String, List<Piece.Corner>> outlines(SheetNode node) {
    Map<String, List<Piece.Corner>> outlines = new HashMap<>();
    node.fields("outlines")
        .forEach(
            (size, corners) -> {
              List<Piece.Corner> outline = new ArrayList<>();
              for (SheetNode corner : node.at("outlines").each(size)) {
                outline.add(new Piece.Corner(corner.mm("x"), corner.mm("y")));
              }
              outlines.put(size, List.copyOf(outline));
            });
    return outlines;
  }

  private static When when(SheetNode node) {
    Map<String, List<String>> options = new HashMap<>();
    node.fields("when").keySet().forEach(key -> options.put(key, node.at("when").texts(key)));
    return new When(options);
  }

  private static Map<Layer, ClothNeed> cloth(SheetNode sheet) {
    Map<Layer, ClothNeed> needs = new EnumMap<>(Layer.class);
    sheet
        .fields("cloth")
        .forEach(
            (layer, node) ->
                need(node).ifPresent(need -> needs.put(Layer.valueOf(upper(layer)), need)));
    return needs;
  }

  private static Optional<ClothNeed> need(SheetNode node) {
    double around = node.at("stretchAround").quantity(SheetQuantities::fraction);
    double along = node.at("stretchAlong").quantity(SheetQuantities::fraction);
    double use = node.at("use").quantity(SheetQuantities::fraction);
    Double recovery = node.maybe("recovery", SheetQuantities::fraction).orElse(null);
    SheetNode weight = node.at("weight");
    Double lightest = weight.maybe("from", SheetQuantities::gsm).orElse(null);
    Double heaviest = weight.maybe("to", SheetQuantities::gsm).orElse(null);
    return node.made(
        () -> new ClothNeed(around, along, recovery, lightest, heaviest, new StretchUse(use)),
        "cloth-need");
  }

  private static Optional<Trim> trim(SheetNode node) {
    Optional<Double> width = node.maybe("width", SheetQuantities::mm);
    double fraction = node.maybe("fraction", SheetQuantities::fraction).orElse(1.0);
    double plus = node.maybe("plus", SheetQuantities::mm).orElse(0.0);
    return node.made(
        () ->
            new Trim(
                node.text("id"),
                node.text("name"),
                node.text("kind"),
                width,
                node.maybeText("of"),
                fraction,
                plus,
                node.json().path("times").asInt(1),
                when(node),
                node.texts("sewnTo").stream().map(Edge.Ref::parse).toList(),
                leftOut(node)),
        "trim");
  }

  private static String upper(String id) {
    return id.toUpperCase(Locale.ROOT).replace('-', '_');
  }
}
