package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The lists of figures and amount methods hang together with the book, and each in itself. */
class FormulasTest {
  private static final RuleBookSource BOOK = Answering.BOOK.source();

  @Test
  void every_formula_has_a_sentence_for_its_working() {
    Map<String, String> sentences = BOOK.wording().sentences();
    Stream<Formula> figures = Arrays.stream(DerivedFigure.values()).map(DerivedFigure::formula);
    Stream<Formula> layers =
        Arrays.stream(LayerFigure.values()).map(figure -> figure.of("main").formula());
    Stream<Formula> amounts =
        Arrays.stream(AmountMethod.values())
            .flatMap(method -> Stream.concat(method.formulas().stream(), method.slack().stream()));
    List<String> missing =
        Stream.of(figures, layers, amounts)
            .flatMap(formulas -> formulas)
            .map(Formula::wording)
            .filter(key -> !sentences.containsKey(key))
            .toList();
    assertEquals(List.of(), missing);
  }

  /** They are derived in the order of the list, so one that came later would never be there. */
  @Test
  void every_figure_comes_after_the_figures_it_needs() {
    for (DerivedFigure figure : DerivedFigure.values()) {
      for (Input input : figure.formula().inputs()) {
        assertTrue(
            !(input instanceof DerivedFigure other) || other.ordinal() < figure.ordinal(),
            figure + " needs " + input);
      }
    }
  }

  @Test
  void the_catalog_names_methods_that_are_there() {
    for (AdjustmentEntry entry : BOOK.catalog().adjustments().values()) {
      assertEquals(entry.method(), AmountMethod.of(entry.method()).id());
    }
    assertThrows(IllegalArgumentException.class, () -> AmountMethod.of("band take in"));
  }
}
