package easewright.saying;

import easewright.rulebook.Catalog.SignEntry;
import java.util.List;
import java.util.Map;

/** A sign of the catalog, in the contract's form. */
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
  /** The note for a catalog entry. */
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
