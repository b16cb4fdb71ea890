package easewright.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.handbook.GarmentDrawing.Label;
import easewright.rulebook.Catalog;
import easewright.rulebook.RuleBookSource;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The drawing beside the place words of the catalog, read here from its own files. */
class GarmentDrawingTest {
  private static final Catalog CATALOG = RuleBookSource.read(Path.of("rules")).catalog();
  private static final GarmentDrawing DRAWING = GarmentDrawing.plainTop();

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
    drawn.addAll(GarmentDrawing.NOT_DRAWN);
    labels().map(Label::place).filter(Objects::nonNull).forEach(drawn::add);
    assertEquals(List.copyOf(words), drawn.stream().sorted().toList());
  }

  @Test
  void no_label_lies_on_another_or_outside_the_drawing() {
    for (List<Label> view : List.of(DRAWING.front(), DRAWING.back())) {
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

  private static Stream<Label> labels() {
    return Stream.concat(DRAWING.front().stream(), DRAWING.back().stream());
  }
}
