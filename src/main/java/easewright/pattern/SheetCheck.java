package easewright.pattern;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Checks a sheet for dangling names and for data its family requires. */
final class SheetCheck {

  /** Measurements required to judge a garment, by family. */
  private static final Map<String, Set<String>> NEEDED_MEASUREMENTS =
      Map.of(
          "sports-bra", Set.of("underband", "bust"),
          "soft-bra", Set.of("underband", "bust"));

  private final PatternSheet sheet;
  private final SheetNode root;
  private final Set<String> measurements = new HashSet<>();

  SheetCheck(PatternSheet sheet, SheetNode root) {
    this.sheet = sheet;
    this.root = root;
    sheet.sizes().forEach(size -> measurements.addAll(size.finishedMm().keySet()));
  }

  /** Reports dangling and duplicate names. */
  void names() {
    unique("choices", sheet.choices(), SheetChoice::id);
    unique("pieces", sheet.pieces(), Piece::id);
    unique("trims", sheet.trims(), Trim::id);
    choices();
    for (SheetNode node : root.each("pieces")) {
      piece(node);
    }
    root.each("trims").forEach(this::when);
  }

  /** Reports what is impossible, or missing for its family, regardless of names. */
  void sense() {
    root.each("choices").forEach(this::used);
    root.each("pieces").forEach(this::cloth);
    for (String key : NEEDED_MEASUREMENTS.getOrDefault(sheet.family(), Set.of())) {
      if (!measurements.contains(key)) {
        root.at("sizes").fault("measurement-missing", "measurement", key);
      }
    }
    negativeEase();
  }

  private <T> void unique(String list, List<T> items, Function<T, String> id) {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < items.size(); i++) {
      if (!seen.add(id.apply(items.get(i)))) {
        root.each(list).get(i).at("id").fault("id-twice", "id", id.apply(items.get(i)));
      }
    }
  }

  private void choices() {
    for (SheetNode node : root.each("choices")) {
      String id = node.text("id");
      SheetChoice choice = sheet.choice(id).orElseThrow();
      unique("options", node, choice);
      if (choice.option(choice.defaultOption()).isEmpty()) {
        option(node.at("default"), new OptionRef(id, choice.defaultOption()));
      }
      for (SheetNode optionNode : node.each("options")) {
        for (String list : List.of("requires", "excludes")) {
          for (SheetNode ref : optionNode.each(list)) {
            option(ref, OptionRef.parse(ref.json().asText()));
          }
        }
        optionNode.fields("changes").forEach((key, at) -> measured(at, key));
      }
    }
  }

  private void used(SheetNode node) {
    String id = node.text("id");
    boolean used = node.each("options").stream().anyMatch(option -> option.has("changes"));
    used |= sheet.pieces().stream().anyMatch(piece -> piece.when().options().containsKey(id));
    used |= sheet.trims().stream().anyMatch(trim -> trim.when().options().containsKey(id));
    if (!used) {
      node.fault("choice-changes-nothing", "choice", id);
    }
  }

  private static void unique(String list, SheetNode node, SheetChoice choice) {
    Set<String> seen = new HashSet<>();
    if (node.text("pick").equals("any")) {
      seen.add(SheetChoice.NONE);
    }
    for (SheetNode option : node.each(list)) {
      if (!seen.add(option.text("id"))) {
        option.at("id").fault("option-twice", "choice", choice.id());
      }
    }
  }

  private void cloth(SheetNode node) {
    if (!sheet.cloth().containsKey(Layer.valueOf(node.text("layer").toUpperCase(Locale.ROOT)))
        && !root.at("cloth").has(node.text("layer"))) {
      node.at("layer").fault("cloth-not-described", "layer", node.text("layer"));
    }
  }

  private void piece(SheetNode node) {
    when(node);
    boolean main = node.text("layer").equals("main");
    node.maybeText("follows").ifPresent(id -> follows(node, id, main));
    Set<String> seen = new HashSet<>();
    for (SheetNode edge : node.each("edges")) {
      if (!seen.add(edge.text("id"))) {
        edge.at("id").fault("edge-twice");
      }
      edge.maybeText("length").ifPresent(key -> measured(edge.at("length"), key));
      edge.each("crosses").forEach(key -> measured(key, key.json().asText()));
    }
  }

  private void follows(SheetNode node, String id, boolean main) {
    Optional<Piece> leader =
        sheet.pieces().stream().filter(piece -> piece.id().equals(id)).findFirst();
    if (main || leader.isEmpty() || leader.get().layer() != Layer.MAIN) {
      node.at("follows").fault("follows-no-main-piece", "piece", id);
    } else if (node.has("edges") || node.has("lines")) {
      node.fault("follows-with-edges");
    }
  }

  private void when(SheetNode node) {
    for (Map.Entry<String, SheetNode> entry : node.fields("when").entrySet()) {
      for (SheetNode option : node.at("when").each(entry.getKey())) {
        option(option, new OptionRef(entry.getKey(), option.json().asText()));
      }
    }
  }

  private void option(SheetNode node, OptionRef ref) {
    if (sheet.choice(ref.choice()).flatMap(choice -> choice.option(ref.option())).isEmpty()) {
      node.fault("unknown-option", "ref", ref);
    }
  }

  private void measured(SheetNode node, String key) {
    if (!measurements.contains(key)) {
      node.fault("unknown-measurement", "measurement", key);
    }
  }

  private void negativeEase() {
    for (PatternSize size : sheet.sizes()) {
      Double underband = size.finishedMm().get("underband");
      if (underband != null
          && size.underbustMm().filter(body -> underband >= body.toMm()).isPresent()) {
        root.at("sizes").fault("underband-too-large", "size", size.name());
      }
    }
  }
}
