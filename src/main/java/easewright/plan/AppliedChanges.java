package easewright.plan;

import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.Layer;
import easewright.pattern.Piece;
import easewright.pattern.Trim;
import easewright.plan.AcceptedChange.Place;
import easewright.plan.ChangeBook.Way;
import easewright.plan.CutPlan.Change;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Effects of accepted adjustments on pieces, finished measurements and elastics. */
final class AppliedChanges {
  private static final String LENGTH_LINE = "-length-line";
  private static final Set<String> ACROSS_LINES =
      Set.of("strap-end", "back-strap-point", "shoulder-seam");

  private final RuleBookSource book;
  private final ChangeBook ways;
  private final Cut cut;
  private final CutRequest request;
  private final List<Change> notes = new ArrayList<>();
  private final Map<String, double[]> boxes = new HashMap<>();
  private final Set<String> newCloth = new HashSet<>();
  private final Map<String, Double> measures = new HashMap<>();
  private final List<ElasticChange> elastics = new ArrayList<>();

  AppliedChanges(RuleBookSource book, ChangeBook ways, CutRequest request, Cut cut) {
    this.book = book;
    this.ways = ways;
    this.request = request;
    this.cut = cut;
    request.accepted().forEach(this::accept);
  }

  List<Change> notes() {
    return notes;
  }

  /** The box of a piece after all changes. */
  Piece.Box box(Piece piece, Piece.Box before) {
    double[] more = boxes.get(piece.id());
    return before == null || more == null
        ? before
        : new Piece.Box(before.aroundMm() + more[0], before.alongMm() + more[1]);
  }

  /** Whether a piece must be cut again from new cloth. */
  boolean needsCloth(Piece piece) {
    return newCloth.contains(piece.id());
  }

  Map<String, Double> finishedMm(Map<String, Double> before) {
    Map<String, Double> after = new HashMap<>(before);
    measures.forEach((key, mm) -> after.computeIfPresent(key, (k, was) -> was + mm));
    return after;
  }

  /** By how much an elastic is lengthened beyond the change of its edge, in mm. */
  double elasticMm(Trim trim) {
    return trim.kind().equals("elastic")
        ? elastics.stream().filter(one -> one.isOf(trim)).mapToDouble(ElasticChange::moreMm).sum()
        : 0;
  }

  /** One elastic made longer or shorter, identified by the places it is sewn to. */
  private record ElasticChange(Set<Edge.Ref> places, Set<String> measures, double moreMm) {

    boolean isOf(Trim trim) {
      return trim.places().isEmpty()
          ? trim.of().filter(measures::contains).isPresent()
          : trim.places().stream().anyMatch(places::contains)
              || places.isEmpty() && trim.of().filter(measures::contains).isPresent();
    }
  }

  private void accept(AcceptedChange change) {
    ChangeBook.Entry entry = ways.of(change.adjustment());
    List<Place> places = places(change, entry);
    if (!entry.way().isOfPieces() && !entry.way().isElastic() || places.isEmpty()) {
      notes.add(note(change, entry.way(), null, null, null, 0, false));
    }
    if (entry.way().isElastic() && change.amountMm() != null) {
      elastics.add(elastic(change, entry, places));
    }
    for (Place place :
        entry.way().isOfPieces() || entry.way().isElastic() ? places : List.<Place>of()) {
      Piece piece = cut.piece(place.piece()).orElseThrow();
      if (entry.way().isElastic()) {
        notes.add(note(change, entry.way(), piece, place.line(), null, piece.occurrences(), false));
      } else {
        piece(change, entry, piece, place);
      }
    }
    double mm = change.amountMm() == null ? 0 : change.amountMm() * (entry.twice() ? 2 : 1);
    if (entry.way().isOfPieces()) {
      entry.measures().forEach(key -> measures.merge(key, sign(entry.way()) * mm, Double::sum));
    }
  }

  /** A wedge folded out makes its edge shorter; other reshaping states no measurement. */
  private static int sign(Way way) {
    return way == Way.ADD || way == Way.LONGER ? 1 : -1;
  }

  private void piece(AcceptedChange change, ChangeBook.Entry entry, Piece piece, Place place) {
    boolean edge = piece.edge(place.line()).isPresent();
    boolean cloth = entry.way() != Way.TAKE || !edge;
    if (cloth) {
      newCloth.add(piece.id());
    }
    Double each = place.eachMm();
    if (each != null && entry.way() != Way.RESHAPE) {
      double mm = sign(entry.way()) * each;
      double[] box = boxes.computeIfAbsent(piece.id(), id -> new double[2]);
      box[runsAlong(place.line()) ? 1 : 0] += mm;
      if (piece.layer() == Layer.MAIN) {
        piece
            .edge(place.line())
            .ifPresent(
                one ->
                    one.crosses()
                        .forEach(
                            girth -> measures.merge(girth, mm * piece.occurrences(), Double::sum)));
      }
    }
    notes.add(note(change, entry.way(), piece, place.line(), each, piece.occurrences(), cloth));
  }

  private static boolean runsAlong(String line) {
    return line.endsWith(LENGTH_LINE) || ACROSS_LINES.contains(line);
  }

  private ElasticChange elastic(AcceptedChange change, ChangeBook.Entry entry, List<Place> places) {
    Set<Edge.Ref> refs = new HashSet<>();
    Set<String> keys = new HashSet<>(entry.measures());
    for (Place place : places) {
      refs.add(new Edge.Ref(place.piece(), place.line()));
      cut.piece(place.piece())
          .flatMap(piece -> piece.edge(place.line()))
          .flatMap(Edge::length)
          .ifPresent(keys::add);
    }
    return new ElasticChange(
        refs, keys, sign(entry.way()) * change.amountMm() * (entry.twice() ? 2 : 1));
  }

  /** The requested places, or else those of the rule book, on the pieces that are cut. */
  private List<Place> places(AcceptedChange change, ChangeBook.Entry way) {
    AdjustmentEntry entry = book.catalog().adjustments().get(change.adjustment());
    if (!change.places().isEmpty() || entry == null || entry.at() == null) {
      return change.places().stream().map(place -> shared(place, change)).toList();
    }
    for (String line : entry.at()) {
      List<Place> found = shares(line, change);
      if (!found.isEmpty()) {
        List<Place> all = new ArrayList<>(found);
        for (String other : entry.alsoAt() == null ? List.<String>of() : entry.alsoAt()) {
          if (!other.equals(line)) {
            all.addAll(shares(other, change));
          }
        }
        return all;
      }
    }
    return List.of();
  }

  private List<Place> shares(String line, AcceptedChange change) {
    double amount = change.amountMm() == null ? 0 : change.amountMm();
    List<Cut.Share> shares = cut.share(amount, line);
    return shares.stream()
        .map(
            share ->
                new Place(
                    share.piece().id(),
                    line,
                    change.amountMm() == null
                        ? null
                        : runsAlong(line) ? change.amountMm() : (Double) share.eachMm()))
        .toList();
  }

  private Place shared(Place place, AcceptedChange change) {
    return place.eachMm() != null
        ? place
        : shares(place.line(), change).stream()
            .filter(one -> one.piece().equals(place.piece()))
            .findFirst()
            .orElse(place);
  }

  private Change note(
      AcceptedChange change,
      Way way,
      Piece piece,
      String line,
      Double eachMm,
      int edges,
      boolean cloth) {
    String name = book.catalog().nameOf(change.adjustment());
    String words = line == null ? null : Texts.words(line);
    CutPlan.Amount each = eachMm == null ? null : Texts.marked(eachMm, request.units());
    String key =
        piece == null
            ? way.isOfPieces() || way.isElastic() ? "nowhere" : way.name().toLowerCase()
            : way.isElastic()
                ? "elastic"
                : each == null
                    ? "redraw"
                    : way.name().toLowerCase() + (way == Way.TAKE && cloth ? "-anew" : "");
    return new Change(
        change.adjustment(),
        name,
        piece == null ? null : piece.name(),
        words,
        way.isElastic() ? "elastic" : way.isOfPieces() ? way.name().toLowerCase() : "nothing",
        each,
        edges,
        cloth,
        book.wording()
            .say(
                "plan-change-" + key,
                "name",
                name,
                "piece",
                piece == null ? "" : piece.name(),
                "edge",
                words == null ? "" : words,
                "edges",
                edges,
                "each",
                each == null ? "" : each.text(),
                "amount",
                change.amountMm() == null
                    ? ""
                    : Texts.amount(change.amountMm(), request.units()).text()));
  }
}
