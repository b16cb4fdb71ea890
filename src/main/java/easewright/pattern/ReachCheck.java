package easewright.pattern;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds items that no combination of choices ever uses. */
final class ReachCheck {

  private final PatternSheet sheet;
  private final SheetNode root;
  private final List<Map<String, String>> ways;

  /**
   * @param ways the combinations of choices that the options allow
   */
  ReachCheck(PatternSheet sheet, SheetNode root, List<Map<String, String>> ways) {
    this.sheet = sheet;
    this.root = root;
    this.ways = ways;
  }

  void run() {
    for (SheetNode choice : root.each("choices")) {
      String id = choice.text("id");
      for (SheetNode option : choice.each("options")) {
        String optionId = option.text("id");
        if (ways.stream().noneMatch(way -> SheetChoice.taken(optionId, way.get(id)))) {
          option.fault("option-never-chosen", "choice", id, "option", optionId);
        }
      }
    }
    defaults();
    List<SheetNode> pieces = root.each("pieces");
    for (int i = 0; i < pieces.size(); i++) {
      reached(pieces.get(i), sheet.pieces().get(i).when(), "piece");
      followed(pieces.get(i), sheet.pieces().get(i));
    }
    List<SheetNode> trims = root.each("trims");
    for (int i = 0; i < trims.size(); i++) {
      reached(trims.get(i), sheet.trims().get(i).when(), "trim");
      placed(trims.get(i), sheet.trims().get(i));
    }
  }

  private void defaults() {
    boolean together =
        ways.stream()
            .anyMatch(
                way ->
                    sheet.choices().stream()
                        .allMatch(c -> c.defaultOption().equals(way.get(c.id()))));
    if (!together) {
      root.at("choices").fault("defaults-apart");
    }
  }

  private void reached(SheetNode node, When when, String what) {
    if (ways.stream().noneMatch(when::holds)) {
      node.at("when").fault("never-needed", "what", what);
    }
  }

  private void followed(SheetNode node, Piece piece) {
    piece
        .follows()
        .flatMap(this::piece)
        .map(Piece::when)
        .flatMap(
            leader ->
                ways.stream()
                    .filter(way -> piece.when().holds(way) && !leader.holds(way))
                    .findFirst())
        .ifPresent(
            way ->
                node.at("follows")
                    .fault(
                        "cut-without-what-it-follows", "piece", piece.id(), "way", Ways.said(way)));
  }

  private Optional<Piece> piece(String id) {
    return sheet.pieces().stream().filter(p -> p.id().equals(id)).findFirst();
  }

  private void placed(SheetNode node, Trim trim) {
    List<When> places =
        trim.places().stream()
            .flatMap(ref -> piece(ref.piece()).stream())
            .map(Piece::when)
            .toList();
    if (places.isEmpty()) {
      return;
    }
    ways.stream()
        .filter(way -> trim.when().holds(way) && places.stream().noneMatch(w -> w.holds(way)))
        .findFirst()
        .ifPresent(way -> node.at("sewnTo").fault("trim-without-piece", "way", Ways.said(way)));
  }
}
