package easewright.plan;

import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.Piece;
import easewright.plan.Seam.Side;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The steps of sewing in words. */
record SewingWords(Cut cut, Wording wording) {

  /** Taking old pieces out undoes the work: the seam sewn last first. */
  String unpick(List<Seam> sewn) {
    List<String> names = new ArrayList<>(sewn.stream().map(SewingWords::name).toList());
    Collections.reverse(names);
    return wording.say("plan-sew-unpick", "seams", listed(names));
  }

  String sewnOn(Piece piece) {
    List<String> edges =
        piece.edges().stream()
            .filter(edge -> edge.finish().isPresent())
            .map(edge -> wording.say("plan-sew-edge", "edge", name(edge), "finish", finish(edge)))
            .toList();
    return wording.say("plan-sew-on", "piece", piece.name(), "edges", listed(edges));
  }

  String layers(Piece main, List<Piece> beneath) {
    return wording.say(
        "plan-sew-layers",
        "layers",
        listed(beneath.stream().map(Piece::name).toList()),
        "piece",
        main.name());
  }

  String seam(Seam seam, List<SewnTrim> caught) {
    List<String> joins = new ArrayList<>();
    Set<Side> told = new HashSet<>();
    seam.sides().stream()
        .sorted(Comparator.comparing(side -> -seam.partners(side).size()))
        .filter(side -> !told.contains(side))
        .forEachOrdered(
            side -> {
              List<Side> partners = seam.partners(side);
              told.add(side);
              told.addAll(partners);
              joins.add(join(side.piece(), partners.stream().map(Side::piece).toList()));
            });
    List<String> step = new ArrayList<>();
    step.add(wording.say("plan-sew-seam", "seam", name(seam), "joins", String.join("; ", joins)));
    if (seam.sides().stream().anyMatch(side -> side.edge().notches() > 0)) {
      step.add(wording.say("plan-sew-notches"));
    }
    caught.forEach(trim -> step.add(wording.say("plan-sew-catch", "trim", counted(trim))));
    return String.join(" ", step);
  }

  private String join(Piece one, List<Piece> others) {
    return others.equals(List.of(one))
        ? wording.say("plan-sew-itself", "piece", one.name())
        : wording.say(
            "plan-sew-join",
            "piece",
            one.name(),
            "others",
            listed(others.stream().map(Piece::name).distinct().toList()));
  }

  /**
   * A trim sewn to its edges, or drawn in along its lines.
   *
   * @param sentence key of the sentence, which says "trim" and "place"
   */
  String trim(String sentence, SewnTrim trim) {
    return wording.say(sentence, "trim", counted(trim), "place", places(trim));
  }

  /** "front armhole of Centre front and Side panel; back armhole of Back". */
  private String places(SewnTrim trim) {
    Map<String, TreeSet<Integer>> at = new LinkedHashMap<>();
    Stream.concat(
            trim.edges().stream().map(side -> Map.entry(side.edge().id(), side.piece())),
            trim.lines().stream().map(line -> Map.entry(line.id(), line.piece())))
        .forEach(
            place ->
                at.computeIfAbsent(place.getKey(), id -> new TreeSet<>())
                    .add(cut.pieces().indexOf(place.getValue())));
    List<String> named = new ArrayList<>();
    at.forEach(
        (id, pieces) ->
            named.add(
                wording.say(
                    "plan-sew-place",
                    "edge",
                    Texts.words(id),
                    "pieces",
                    listed(pieces.stream().map(one -> cut.pieces().get(one).name()).toList()))));
    return String.join("; ", named);
  }

  String finish(Side side) {
    return wording.say(
        "plan-sew-finish",
        "edge",
        name(side.edge()),
        "piece",
        side.piece().name(),
        "finish",
        finish(side.edge()));
  }

  String rest(List<SewnTrim> trims) {
    return wording.say(
        "plan-sew-rest", "things", listed(trims.stream().map(this::counted).toList()));
  }

  private String counted(SewnTrim sewn) {
    return sewn.trim().times() == 1
        ? sewn.trim().name()
        : wording.say("plan-times", "count", sewn.trim().times(), "name", sewn.trim().name());
  }

  /** "A", "A and B", "A, B and C". */
  private String listed(List<String> names) {
    int last = names.size() - 1;
    return last < 1
        ? String.join("", names)
        : wording.say(
            "plan-sew-list",
            "first",
            String.join(", ", names.subList(0, last)),
            "last",
            names.get(last));
  }

  private static String name(Seam seam) {
    return Texts.words(seam.id());
  }

  private static String name(Edge edge) {
    return Texts.words(edge.id());
  }

  private static String finish(Edge edge) {
    return edge.finish().orElseThrow();
  }
}
