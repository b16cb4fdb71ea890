package easewright.fitting;

import easewright.measure.Length;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is known of a pattern that has no sheet, each null when not said.
 *
 * @param back "racer", "rounded", "straight" or "crossed"
 * @param closing "pull-on", "back" or "front"
 * @param front "one-piece", "shaped-seam" or "darts"
 * @param supportLayer "none", "single" or "double"
 * @param lining "none", "part" or "full"
 * @param stretchAsked what stretch around the pattern asks of the main cloth, a fraction
 * @param seamAllowance what the pattern allows at a seam
 * @param seamsAround how many seams the bust girth crosses
 * @param drafted finished lengths that the pattern states for the size cut
 */
public record Design(
    String back,
    String closing,
    String front,
    String supportLayer,
    String lining,
    Double stretchAsked,
    Length seamAllowance,
    Integer seamsAround,
    Drafted drafted) {

  /** Nothing is known. */
  public static final Design NONE =
      new Design(null, null, null, null, null, null, null, null, Drafted.NONE);

  /** The words said of the design, by the name of their field. */
  public Map<String, String> words() {
    Map<String, String> words = new LinkedHashMap<>();
    words.put("back", back);
    words.put("closing", closing);
    words.put("front", front);
    words.put("supportLayer", supportLayer);
    words.put("lining", lining);
    words.values().removeIf(word -> word == null);
    return words;
  }

  /**
   * Finished lengths at rest, each null when not stated.
   *
   * @param underband girth along the lower edge
   * @param bust girth around the fullest part
   * @param shoulderToBustPoint from the shoulder at the neck to the fullest point
   * @param shoulderToUnderbust from the shoulder at the neck over the bust to the underband
   * @param bustPointWidth from one fullest point straight across to the other
   */
  public record Drafted(
      Length underband,
      Length bust,
      Length shoulderToBustPoint,
      Length shoulderToUnderbust,
      Length bustPointWidth) {

    /** Nothing is stated. */
    public static final Drafted NONE = new Drafted(null, null, null, null, null);

    /** The lengths stated, by the name of their field, which is a sheet's trade term. */
    public Map<String, Length> lengths() {
      Map<String, Length> lengths = new LinkedHashMap<>();
      lengths.put("underband", underband);
      lengths.put("bust", bust);
      lengths.put("shoulderToBustPoint", shoulderToBustPoint);
      lengths.put("shoulderToUnderbust", shoulderToUnderbust);
      lengths.put("bustPointWidth", bustPointWidth);
      lengths.values().removeIf(length -> length == null);
      return lengths;
    }

    /** The same, mm. */
    public Map<String, Double> lengthsMm() {
      Map<String, Double> inMm = new LinkedHashMap<>();
      lengths().forEach((term, length) -> inMm.put(term, length.mm()));
      return inMm;
    }
  }
}
