package easewright.saying;

import com.fasterxml.jackson.annotation.JsonInclude;
import easewright.naming.KebabCase;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.Piece;
import easewright.pattern.SheetChoice;
import easewright.pattern.Trim;
import java.util.List;
import java.util.Map;

/**
 * Summary of a valid sheet as parsed.
 *
 * @param valid always true; an invalid sheet gives a problem
 * @param id the sheet's id
 * @param name its name
 * @param constructionType its construction type
 * @param supportClass the support it is designed for
 * @param sizes names of its sizes, in the sheet's order
 * @param choices what the maker decides
 * @param pieces total number of pieces
 * @param cut pieces cut with the default choices
 * @param trims trims needed with the default choices
 */
public record SheetSummary(
    boolean valid,
    String id,
    String name,
    String constructionType,
    String supportClass,
    List<String> sizes,
    List<ChoiceLine> choices,
    int pieces,
    List<CutLine> cut,
    List<TrimLine> trims) {

  /** A choice: its options and the default. */
  public record ChoiceLine(String id, List<String> options, String defaultOption) {}

  /** A piece cut by default: the number, the cloth, and how to cut it. */
  public record CutLine(
      String piece, String layer, int count, boolean onFold, boolean mirrored, String leftOut) {}

  /** A trim needed by default; lengths of each in mm in the first and in the last size. */
  public record TrimLine(
      String trim,
      int times,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Double> lengthsMm,
      String leftOut) {}

  /** The summary of a parsed sheet. */
  public static SheetSummary of(PatternSheet sheet) {
    return new SheetSummary(
        true,
        sheet.id(),
        sheet.name(),
        KebabCase.of(sheet.constructionType()),
        KebabCase.of(sheet.supportClass()),
        sheet.sizes().stream().map(PatternSize::name).toList(),
        sheet.choices().stream().map(SheetSummary::line).toList(),
        sheet.pieces().size(),
        sheet.cut(Map.of()).pieces().stream().map(SheetSummary::line).toList(),
        sheet.trims(Map.of()).stream().map(trim -> line(sheet, trim)).toList());
  }

  private static ChoiceLine line(SheetChoice choice) {
    return new ChoiceLine(
        choice.id(),
        choice.options().stream().map(SheetChoice.Option::id).toList(),
        choice.defaultOption());
  }

  private static CutLine line(Piece piece) {
    return new CutLine(
        piece.id(),
        KebabCase.of(piece.layer()),
        piece.count(),
        piece.onFold(),
        piece.mirrored(),
        piece.leftOut().orElse(null));
  }

  private static TrimLine line(PatternSheet sheet, Trim trim) {
    List<PatternSize> ends =
        List.of(sheet.sizes().get(0), sheet.sizes().get(sheet.sizes().size() - 1));
    return new TrimLine(
        trim.id(),
        trim.times(),
        ends.stream()
            .flatMap(size -> trim.lengthMm(sheet.finishedMm(size, Map.of())).stream())
            .toList(),
        trim.leftOut().orElse(null));
  }
}
