package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.measure.Length;
import easewright.measure.UnitSystem;
import easewright.pattern.Cut;
import easewright.pattern.Layer;
import easewright.pattern.PatternSheets;
import easewright.pattern.Piece;
import easewright.plan.AcceptedChange;
import easewright.plan.AcceptedChange.Place;
import easewright.plan.Cloth;
import easewright.plan.CutRequest;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** Reads a cut-plan request from JSON and reports all its faults at once. */
public final class CutPlanReader {
  /**
   * The field of the fitting that the accepted changes belong to; it is read by the code that
   * answers it.
   */
  public static final String FITTING = "fitting";

  private static final int MOST_CHANGES = 20;
  private static final int MOST_PLACES = 40;

  private final PatternSheets sheets;
  private final Collection<String> adjustments;
  private final RequestWords words;
  private final FamilyNames families;

  /**
   * @param adjustments ids of changes that a plan may name as accepted
   * @param book the sentences for faults, and the limits of lengths
   */
  public CutPlanReader(PatternSheets sheets, Collection<String> adjustments, RuleBookSource book) {
    this.words = new RequestWords(book);
    this.families = new FamilyNames(book, sheets);
    this.sheets = sheets;
    this.adjustments = adjustments;
  }

  /**
   * Reads one request.
   *
   * @throws FaultyRequest with every fault, if there is any
   */
  public CutRequest read(JsonNode json) {
    Faults faults = new Faults(words);
    CutRequest request = read(new RequestField(json, faults));
    faults.refuse();
    return request;
  }

  private CutRequest read(RequestField root) {
    root =
        root.fields(
            "units",
            FamilyNames.FIELD,
            "pattern",
            "size",
            "sizes",
            "sizeSystem",
            "choices",
            "cloths",
            "accepted",
            "everything",
            FITTING);
    String units = root.at("units").oneOf(List.of("metric", "imperial"));
    RequestField pattern = root.at("pattern");
    if (!pattern.isWritten()) {
      pattern.needs("fault-pattern-missing");
    }
    PatternReader read =
        new PatternReader(
            pattern, root.at("size"), root.at("sizeSystem"), root.at("choices"), sheets);
    families.read(root, read.sheet());
    RequestField sizes = root.at("sizes").fields("upper", "lower");
    if (sizes.isWritten() == root.at("size").isWritten()) {
      if (sizes.isWritten()) {
        root.at("size").cannotBeRead("fault-two-sizes");
      } else {
        root.at("size").needs("fault-two-sizes-remedy");
      }
    }
    String upper = sizes.isWritten() ? size(sizes.at("upper"), read) : read.sizeCut();
    String lower = sizes.isWritten() ? size(sizes.at("lower"), read) : read.sizeCut();
    Cut cut = cut(read);
    Map<Layer, Layer> cutFrom = new EnumMap<>(Layer.class);
    Map<Layer, Cloth> cloths = CutClothReader.cloths(root.at("cloths"), cut, cutFrom);
    List<AcceptedChange> accepted = accepted(root.at("accepted"), cut);
    boolean everything = root.at("everything").flag();
    if (read.sheet() == null) {
      return null;
    }
    return new CutRequest(
        units == null
            ? FirstLength.system(root.node()).orElse(UnitSystem.METRIC)
            : UnitSystem.valueOf(units.toUpperCase(Locale.ROOT)),
        read.sheet(),
        upper,
        lower,
        read.choices(),
        cloths,
        cutFrom,
        accepted,
        everything);
  }

  private static String size(RequestField spot, PatternReader read) {
    if (!spot.isWritten()) {
      spot.needs("fault-size-missing");
    }
    return SheetSizes.read(spot, read.sheet(), read.region());
  }

  /** The pieces for these choices; null if the choices have faults. */
  private static Cut cut(PatternReader read) {
    try {
      return read.sheet() == null ? null : read.sheet().cut(read.choices());
    } catch (IllegalArgumentException named) {
      return null;
    }
  }

  private List<AcceptedChange> accepted(RequestField list, Cut cut) {
    List<AcceptedChange> accepted = new ArrayList<>();
    for (RequestField item : list.items(MOST_CHANGES)) {
      RequestField spot = item.fields("adjustment", "amount", "places");
      if (!spot.at("adjustment").isWritten()) {
        spot.at("adjustment").needs("fault-adjustment-missing");
      }
      String id = spot.at("adjustment").oneOf(adjustments);
      Length amount = spot.at("amount").length("least-change", "largest-amount");
      List<Place> places = places(spot.at("places"), cut);
      if (id != null && accepted.stream().anyMatch(one -> one.adjustment().equals(id))) {
        spot.cannotBe("fault-adjustment-twice");
      }
      if (id != null) {
        accepted.add(new AcceptedChange(id, amount == null ? null : amount.mm(), places));
      }
    }
    return accepted;
  }

  private static List<Place> places(RequestField list, Cut cut) {
    List<Place> places = new ArrayList<>();
    for (RequestField item : list.items(MOST_PLACES)) {
      RequestField spot = item.fields("piece", "line", "each");
      Length each = spot.at("each").length("least-change-at-a-place", "largest-amount");
      for (String needed : List.of("piece", "line")) {
        if (!spot.at(needed).isWritten()) {
          spot.at(needed).needs("fault-place-missing");
        }
      }
      if (cut == null) {
        continue;
      }
      String named =
          spot.at("piece")
              .oneOf(
                  cut.pieces().stream()
                      .flatMap(piece -> Stream.of(piece.name(), piece.id()))
                      .toList());
      Piece piece =
          cut.pieces().stream()
              .filter(one -> one.id().equals(named) || one.name().equals(named))
              .findFirst()
              .orElse(null);
      String line = piece == null ? null : line(spot.at("line"), piece);
      if (line != null) {
        places.add(new Place(piece.id(), line, each == null ? null : each.mm()));
      }
    }
    return places;
  }

  /** A line or edge of a piece by its id, or by its name in an answer. */
  private static String line(RequestField spot, Piece piece) {
    List<String> ids =
        Stream.concat(piece.lines().stream(), piece.edges().stream().map(edge -> edge.id()))
            .toList();
    String text = spot.text();
    if (text == null) {
      return null;
    }
    String id = text.replace(' ', '-');
    return ids.contains(id) ? id : spot.oneOf(ids);
  }
}
