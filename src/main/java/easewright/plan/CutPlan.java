package easewright.plan;

import com.fasterxml.jackson.annotation.JsonView;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.MissingNote;
import easewright.diagnosis.Answer.RuleBookStamp;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A cut plan: pieces, cloth and supplies. The same data feeds JSON, Markdown and the page.
 *
 * <p>Lengths are in millimetres, with a text in the client's units; shares are fractions.
 *
 * @param ruleBook the rule book used
 * @param understood the request as parsed
 * @param cautions safety cautions for cutting, and before anything is made tighter
 * @param changes effects of accepted adjustments, piece by piece
 * @param blend seams to draw from one size into another, when sizes are mixed
 * @param cutList what to cut, cloth by cloth and layer by layer
 * @param buy how much cloth to buy
 * @param layouts how the pieces lie on each cloth
 * @param supplies elastics, straps and hardware, with their lengths
 * @param needles needles to fit
 * @param stitches stitches to sew with
 * @param order the steps in order
 * @param bundles pieces to keep together, and their labels
 * @param choices what every other option would add or save
 * @param missing what was not given, and what it would change
 */
public record CutPlan(
    RuleBookStamp ruleBook,
    Understood understood,
    List<String> cautions,
    List<Change> changes,
    List<Blend> blend,
    List<LayerCut> cutList,
    List<Purchase> buy,
    @JsonView(Answer.Full.class) List<Laid> layouts,
    List<Supply> supplies,
    List<Needle> needles,
    List<Stitch> stitches,
    List<String> order,
    @JsonView(Answer.Full.class) List<Bundle> bundles,
    @JsonView(Answer.Full.class) List<Otherwise> choices,
    List<MissingNote> missing) {

  /** The same plan with further cautions before its own. */
  public CutPlan cautioning(List<String> first) {
    List<String> all = new ArrayList<>(first);
    all.addAll(cautions);
    return new CutPlan(
        ruleBook,
        understood,
        all,
        changes,
        blend,
        cutList,
        buy,
        layouts,
        supplies,
        needles,
        stitches,
        order,
        bundles,
        choices,
        missing);
  }

  /**
   * The request as parsed.
   *
   * @param units "metric" or "imperial"
   * @param name the pattern's name
   * @param upperSize size of everything above the underband
   * @param lowerSize size of the underband
   * @param choices option ids by choice id, defaults included
   * @param recutOnly whether only changed pieces are cut
   */
  public record Understood(
      String units,
      String sheet,
      String name,
      String upperSize,
      String lowerSize,
      Map<String, String> choices,
      boolean recutOnly) {}

  /** A length: as a tape shows it or a shop sells it, and in millimetres. */
  public record Amount(String text, double mm) {}

  /**
   * One change at one place.
   *
   * @param adjustment id of the adjustment; name and says are its texts
   * @param piece name of the piece, or null if only a supply changes or nothing is cut
   * @param edge name of the edge or line
   * @param way "add", "take", "reshape", "elastic" or "nothing"
   * @param each what is added or taken at each such edge, or null
   * @param edges how many edges share the change
   * @param newCloth whether the piece must be cut again from new cloth
   */
  public record Change(
      String adjustment,
      String name,
      String piece,
      String edge,
      String way,
      Amount each,
      int edges,
      boolean newCloth,
      String says) {}

  /** An edge drawn from one size into the other. */
  public record Blend(
      String piece,
      String edge,
      @JsonView(Answer.Full.class) Amount from,
      @JsonView(Answer.Full.class) Amount to,
      String says) {}

  /** The pieces of one layer and the cloth they are cut from. */
  public record LayerCut(String layer, String name, String cutFrom, List<PieceCut> pieces) {}

  /**
   * One piece to cut.
   *
   * @param count number of cloth pieces it makes
   * @param cut how it is cut, in words
   * @param around the paper's extent around the body, or null
   * @param along its extent up and down, or null
   * @param marks lines and notches to mark before lifting the paper
   * @param trims edges to cut smaller afterwards
   * @param leftOut what changes when it is left out, or null if it is needed
   */
  public record PieceCut(
      String piece,
      String name,
      String size,
      int count,
      @JsonView(Answer.Full.class) boolean onFold,
      @JsonView(Answer.Full.class) boolean mirrored,
      String cut,
      @JsonView(Answer.Full.class) Amount around,
      @JsonView(Answer.Full.class) Amount along,
      @JsonView(Answer.Full.class) Amount seamAllowance,
      List<String> marks,
      List<EdgeTrim> trims,
      String leftOut) {}

  /** An edge to cut smaller, and why. */
  public record EdgeTrim(String edge, @JsonView(Answer.Full.class) Amount by, String says) {}

  /**
   * How much of a cloth to buy.
   *
   * @param buy what to ask for in the shop
   * @param layout the length the layout uses
   * @param shrinkage the shrinkage allowed for, a fraction
   * @param use the part of the cloth laid out that pieces cover, a fraction
   * @param working how it was computed
   */
  public record Purchase(
      String cloth,
      String name,
      Amount buy,
      @JsonView(Answer.Full.class) Amount layout,
      @JsonView(Answer.Full.class) double shrinkage,
      @JsonView(Answer.Full.class) double use,
      @JsonView(Answer.Full.class) String working) {}

  /**
   * A layout; x runs across the cloth from the fold or the left selvedge, y along it.
   *
   * @param laid "folded" or "open"
   * @param width the cloth's usable width
   * @param layWidth the width as laid
   * @param says how the cloth lies, in words
   */
  public record Laid(
      String cloth,
      String name,
      String laid,
      Amount width,
      Amount layWidth,
      Amount length,
      double use,
      boolean napOneWay,
      String stretch,
      String says,
      List<LaidPiece> pieces) {}

  /**
   * A paper piece and its position, in millimetres.
   *
   * @param number its number on the drawing
   * @param layer the layer it is for
   * @param turned whether its vertical direction runs across the cloth
   * @param onFold whether it touches the fold
   * @param layers through how many layers of cloth it is cut
   * @param faceDown whether the paper lies with its printed side down, for the other half of a pair
   * @param opened whether a half drawn for the fold is unfolded
   */
  public record LaidPiece(
      int number,
      String piece,
      String name,
      String layer,
      double x,
      double y,
      double width,
      double length,
      boolean turned,
      boolean onFold,
      int layers,
      boolean faceDown,
      boolean opened) {}

  /**
   * A supply to buy and cut.
   *
   * @param count how many are cut or needed
   * @param each the length of each, or null if it is counted
   * @param total total length, or null
   * @param was the length of each before the accepted changes, or null if unchanged
   * @param sewnTo the pieces and edges it is sewn to, if the sheet states them
   * @param leftOut what changes when it is left out, or null if it is needed
   */
  public record Supply(
      String trim,
      String name,
      String kind,
      Amount width,
      int count,
      Amount each,
      Amount total,
      Amount was,
      @JsonView(Answer.Full.class) String working,
      @JsonView(Answer.Full.class) List<String> sewnTo,
      String leftOut) {}

  /** A needle, its use and the source. */
  public record Needle(String needle, String use, @JsonView(Answer.Full.class) String source) {}

  /**
   * A stitch for one kind of seam.
   *
   * @param use the kind of seam
   * @param iso4915 its class in ISO 4915
   * @param home what a home machine sews instead
   * @param thread thread that the seams of this kind take, or null
   */
  public record Stitch(
      String use,
      String iso4915,
      String name,
      String home,
      @JsonView(Answer.Full.class) String stretch,
      @JsonView(Answer.Full.class) Amount seam,
      Amount thread,
      @JsonView(Answer.Full.class) String source) {}

  /** Pieces to keep together under one label. */
  public record Bundle(String label, List<String> pieces) {}

  /**
   * What another option would change.
   *
   * @param possible whether it is compatible with the other choices
   * @param piecesMore names of pieces it adds
   * @param piecesLess names of pieces it saves
   * @param suppliesMore supplies it adds, with their length
   * @param suppliesLess supplies it saves
   * @param cloth additional cloth; negative if it saves cloth
   */
  public record Otherwise(
      String choice,
      String choiceName,
      String option,
      String optionName,
      boolean possible,
      List<String> piecesMore,
      List<String> piecesLess,
      List<String> suppliesMore,
      List<String> suppliesLess,
      List<ClothMore> cloth,
      String says) {}

  /** Additional amount of a cloth to buy. */
  public record ClothMore(String cloth, String name, Amount more) {}
}
