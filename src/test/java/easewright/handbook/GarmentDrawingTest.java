package easewright.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.handbook.GarmentDrawing.Label;
import easewright.handbook.GarmentDrawing.Marked;
import easewright.rulebook.Catalog;
import easewright.rulebook.Family;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Compares the drawing with the place names of the usual family's catalog, read here from its own
 * files: its garment is the one drawn.
 */
class GarmentDrawingTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Catalog CATALOG = BOOK.catalog();
  private static final GarmentDrawing DRAWING =
      GarmentDrawing.of(Family.usual(BOOK.families()).outline());
  private static final GarmentDrawing LEGGINGS =
      GarmentDrawing.of(BOOK.families().get("leggings").outline());
  private static final GarmentDrawing T_SHIRT =
      GarmentDrawing.of(BOOK.families().get("t-shirt").outline());

  @Test
  void every_place_word_is_drawn_once_or_listed_as_not_drawn() {
    Set<String> words =
        new TreeSet<>(
            Stream.of(
                    CATALOG.signs().values().stream().map(sign -> sign.where()),
                    CATALOG.adjustments().values().stream().map(change -> change.at()),
                    CATALOG.adjustments().values().stream().map(change -> change.alsoAt()))
                .flatMap(lists -> lists)
                .filter(Objects::nonNull)
                .flatMap(List::stream)
                .toList());
    List<String> drawn = new ArrayList<>(List.of("front", "back")); // the captions of the views
    drawn.add("all-over"); // no part of the garment
    labels(DRAWING).map(Label::place).filter(Objects::nonNull).forEach(drawn::add);
    assertEquals(List.copyOf(words), drawn.stream().sorted().toList());
  }

  /** Dangers that families share may be told of places that this garment does not have. */
  @ParameterizedTest
  @ValueSource(strings = {"leggings", "t-shirt"})
  void every_place_word_of_another_family_is_drawn_once(String id) {
    RuleBookSource whole = RuleBookSource.read(Path.of("rules"));
    Catalog ours = whole.in(whole.families().get(id)).catalog();
    Set<String> words =
        new TreeSet<>(
            Stream.of(
                    ours.signs().values().stream()
                        .filter(sign -> !sign.redFlag())
                        .map(sign -> sign.where()),
                    ours.adjustments().values().stream().map(change -> change.at()),
                    ours.adjustments().values().stream().map(change -> change.alsoAt()))
                .flatMap(lists -> lists)
                .filter(Objects::nonNull)
                .flatMap(List::stream)
                .toList());
    List<String> drawn = new ArrayList<>(List.of("front", "back", "all-over"));
    labels(id.equals("leggings") ? LEGGINGS : T_SHIRT).map(Label::place).forEach(drawn::add);
    assertEquals(List.copyOf(words), drawn.stream().sorted().toList());
  }

  @Test
  void no_label_lies_on_another_or_outside_the_drawing() {
    for (List<Label> view : views()) {
      for (Label label : view) {
        assertTrue(label.y() > 14 && label.y() < 416, label::toString);
        assertTrue(label.toX() >= 0 && label.toX() <= 480, label::toString);
        for (Label other : view) {
          assertTrue(
              label == other || label.x() != other.x() || Math.abs(label.y() - other.y()) >= 16,
              () -> label + " lies on " + other);
        }
      }
    }
  }

  @Test
  void every_place_adjustments_are_made_at_can_be_marked() {
    List<String> unmarked =
        CATALOG.adjustments().values().stream()
            .flatMap(change -> Stream.of(change.at(), change.alsoAt()))
            .filter(Objects::nonNull)
            .flatMap(List::stream)
            .distinct()
            .filter(place -> DRAWING.marking(place).isEmpty())
            .toList();
    assertEquals(List.of(), unmarked);
    assertEquals(Optional.empty(), DRAWING.marking("all-over"));
    assertEquals(Optional.empty(), DRAWING.marking("elbow"));
  }

  /** A label's line ends on the part it names, so the mark must be there. */
  @Test
  void every_mark_lies_where_the_label_of_its_place_points_to() {
    Stream.of(DRAWING, LEGGINGS, T_SHIRT).forEach(GarmentDrawingTest::markedWherePointedTo);
  }

  private static void markedWherePointedTo(GarmentDrawing drawing) {
    labels(drawing)
        .filter(label -> label.place() != null)
        .forEach(
            label -> {
              Marked marked = drawing.marking(label.place()).orElseThrow();
              assertEquals(drawing.back().labels().contains(label), marked.back(), label.place());
              assertEquals(label.name(), marked.name());
              Path2D path = path(marked.line());
              double away = distance(path, label.toX(), label.toY());
              assertTrue(
                  away <= 8 || marked.area() && path.contains(label.toX(), label.toY()),
                  () -> label.place() + " is marked " + away + " from its label");
            });
  }

  private static Path2D path(String data) {
    Path2D path = new Path2D.Double();
    for (String part : data.split("(?=[MLCQZ])")) {
      double[] at =
          Stream.of(part.substring(1).strip().split(" "))
              .filter(number -> !number.isEmpty())
              .mapToDouble(Double::parseDouble)
              .toArray();
      switch (part.charAt(0)) {
        case 'M' -> path.moveTo(at[0], at[1]);
        case 'L' -> path.lineTo(at[0], at[1]);
        case 'Q' -> path.quadTo(at[0], at[1], at[2], at[3]);
        case 'C' -> path.curveTo(at[0], at[1], at[2], at[3], at[4], at[5]);
        default -> path.closePath();
      }
      // More points may follow the same letter.
      for (int i = 2; "ML".indexOf(part.charAt(0)) >= 0 && i < at.length; i += 2) {
        path.lineTo(at[i], at[i + 1]);
      }
    }
    return path;
  }

  private static double distance(Path2D path, double x, double y) {
    double nearest = Double.MAX_VALUE;
    double[] at = new double[6];
    double[] from = new double[2];
    for (PathIterator i = path.getPathIterator(null, 0.5); !i.isDone(); i.next()) {
      if (i.currentSegment(at) == PathIterator.SEG_LINETO) {
        nearest = Math.min(nearest, Line2D.ptSegDist(from[0], from[1], at[0], at[1], x, y));
      }
      from = at.clone();
    }
    return nearest;
  }

  private static List<List<Label>> views() {
    return Stream.of(DRAWING, LEGGINGS, T_SHIRT)
        .flatMap(drawing -> Stream.of(drawing.front().labels(), drawing.back().labels()))
        .toList();
  }

  private static Stream<Label> labels(GarmentDrawing drawing) {
    return Stream.concat(drawing.front().labels().stream(), drawing.back().labels().stream());
  }
}
