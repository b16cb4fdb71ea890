package easewright.saying;

import easewright.rulebook.Catalog.SignEntry;
import java.util.List;
import java.util.Map;

/** A sign of the catalog, as those who report signs need it. */
public record SignNote(
    String id,
    String name,
    String ask,
    String check,
    List<String> where,
    boolean sided,
    List<String> look,
    Map<String, String> degrees,
    String amount,
    String effort,
    String isNot,
    boolean redFlag,
    List<String> phrases) {
  /** The entry of a sign, for those who ask. */
  public static SignNote of(SignEntry sign) {
    return new SignNote(
        sign.id(),
        sign.name(),
        sign.ask(),
        sign.check(),
        sign.where(),
        sign.sided(),
        sign.look(),
        sign.degrees(),
        sign.amount(),
        sign.effort(),
        sign.isNot(),
        sign.redFlag(),
        sign.phrases());
  }
}
