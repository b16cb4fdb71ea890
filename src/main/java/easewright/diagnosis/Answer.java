package easewright.diagnosis;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * What one fitting is answered with, in the order a reader needs it. The same data feeds JSON,
 * Markdown and pages; nothing here is computed again later.
 *
 * <p>Lengths are millimetres with a text in the asker's units beside them, probabilities are
 * fractions of one, weights of evidence are decibans (ten times the decimal logarithm of a
 * likelihood ratio).
 *
 * @param ruleBook which rules were used
 * @param understood the fitting as it was read, values with their units and errors
 * @param cautions what may hurt; dangers come first, the most urgent before the others
 * @param notNow what this answer leaves out and why: the fit, where a danger comes first; anything
 *     tighter, where a caution stops that; null otherwise
 * @param size the recommended size; null without bust and underbust, or in danger
 * @param cloth one verdict for each cloth tested
 * @param findings what the numbers say, whether it holds or not
 * @param causes causes worth mentioning, most probable first
 * @param clear whether the first cause is likely enough to change something for; if not, ask first
 * @param nothingWrong probability that the garment has none of the known faults; null in danger
 * @param adjustments what to change, in the order to try it
 * @param heldBack changes that would treat a likely cause but are not advised now, and why
 * @param questions what to ask next, the most worthwhile first
 * @param unexplained signs reported that no likely cause explains
 * @param whyNot answers to the causes the asker named
 * @param missing what was not given, and what it would change
 * @param measureAgain measurements that are unlikely, and why
 * @param soFar the request to go on from, in the form it was sent; null where none was read
 * @param read what was read from the request's text, and where it stands; null without a text
 */
public record Answer(
    RuleBookStamp ruleBook,
    Understood understood,
    List<CautionNote> cautions,
    String notNow,
    SizeAdvice size,
    List<ClothResult> cloth,
    List<FindingNote> findings,
    List<CauseNote> causes,
    boolean clear,
    Double nothingWrong,
    List<AdjustmentNote> adjustments,
    List<HeldBackNote> heldBack,
    List<QuestionNote> questions,
    List<SignNote> unexplained,
    List<WhyNotNote> whyNot,
    List<MissingNote> missing,
    List<MeasureAgainNote> measureAgain,
    JsonNode soFar,
    JsonNode read) {

  /** An answer that is about a danger and nothing else. */
  static Answer ofDanger(
      RuleBookStamp ruleBook, Understood understood, List<CautionNote> cautions, String notNow) {
    return new Answer(
        ruleBook,
        understood,
        cautions,
        notNow,
        null,
        List.of(),
        List.of(),
        List.of(),
        false,
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        null);
  }

  /** Whether a danger comes before the fit; the answer is then about nothing else. */
  @JsonIgnore
  public boolean isDanger() {
    return !cautions.isEmpty() && cautions.get(0).isDanger();
  }

  /** Whether a caution stands that stops all tightening. */
  public boolean nothingTighter() {
    return cautions.stream().anyMatch(CautionNote::stopsTightening);
  }

  /** Words of the text that may tell of a danger and that only a person can judge. */
  public List<String> readYourself() {
    if (soFar != null && soFar.has("readYourself")) { // those of earlier messages too
      List<String> words = new ArrayList<>();
      soFar.path("readYourself").forEach(one -> words.add(one.asText()));
      return words;
    }
    return read == null ? List.of() : read.path("readYourself").findValuesAsText("text");
  }

  /** The same answer about a danger, with a question about it. */
  public Answer asking(String question) {
    return ofDanger(ruleBook, understood, cautions, notNow + " " + question)
        .goingOnFrom(soFar, read);
  }

  /** The same answer with the request to send back, and what was read from its text. */
  public Answer goingOnFrom(JsonNode soFar, JsonNode read) {
    return new Answer(
        ruleBook,
        understood,
        cautions,
        notNow,
        size,
        cloth,
        findings,
        causes,
        clear,
        nothingWrong,
        adjustments,
        heldBack,
        questions,
        unexplained,
        whyNot,
        missing,
        measureAgain,
        soFar,
        read);
  }

  /**
   * The rules an answer was made with.
   *
   * @param version the rule book's version, its last change
   * @param hash SHA-256 over rules, parameters and catalog
   */
  public record RuleBookStamp(String version, String hash) {}

  /**
   * The request as understood.
   *
   * @param units "metric" or "imperial": how lengths are written in this answer
   * @param sheet the pattern sheet's id, or null
   * @param sizeCut the size that was cut, or null
   * @param body each measurement given, with its error
   * @param signs every sign given, with the words the rule book knows it by
   */
  public record Understood(
      String units, String sheet, String sizeCut, List<Measurement> body, List<SignNote> signs) {}

  /**
   * One measurement as understood.
   *
   * @param name wire name, e.g. "bust"
   * @param text in the asker's units
   * @param mm millimetres
   * @param plusMinusMm one standard deviation of the measuring error, millimetres
   * @param plusMinus the same in the asker's units
   * @param how how it was measured
   */
  public record Measurement(
      String name, String text, double mm, double plusMinusMm, String plusMinus, String how) {}

  /**
   * A length to change by.
   *
   * @param text in the asker's units, rounded to what a tape shows
   * @param mm millimetres, cloth taken up or let out in full
   * @param plusMinusMm one standard deviation, millimetres
   * @param plusMinus the same in the asker's units
   * @param method the amount method's name
   * @param working how it was computed, with the numbers put in
   * @param estimated true when nothing was measured and the amount is a first step to try
   */
  public record Amount(
      String text,
      double mm,
      double plusMinusMm,
      String plusMinus,
      String method,
      String working,
      boolean estimated) {}

  /**
   * A rule that spoke.
   *
   * @param id the rule file's id
   * @param name the rule's own name: id and situation
   * @param summary what it says, in a sentence
   * @param source publication, "common practice" or "from memory"
   * @param page link to its page
   */
  public record RuleRef(String id, String name, String summary, String source, String page) {}

  /**
   * What may hurt.
   *
   * @param urgency "stop" for a danger, "care" or "note"
   * @param stopsTightening true when no tightening is advised while this stands
   * @param doNow what to do now, or null
   * @param soon how soon to ask, "now", "today", "days" or "weeks", or null
   * @param howSoon the same in words
   * @param after what comes next, or null
   * @param because what in the fitting raised it
   */
  public record CautionNote(
      String id,
      String name,
      String says,
      String who,
      String urgency,
      boolean stopsTightening,
      @JsonProperty("do") String doNow,
      String soon,
      String howSoon,
      String after,
      List<String> because,
      RuleRef rule) {

    /** Whether it comes before any question of fit. */
    @JsonIgnore
    public boolean isDanger() {
      return urgency.equals("stop");
    }
  }

  /**
   * The size to cut.
   *
   * @param recommended the most probable size of the pattern, or of EN 13402-3 without a pattern;
   *     null if the chart is out of reach, or where it is withheld
   * @param neighbours other sizes that may be right, most probable first
   * @param sisters sizes of like cup volume one band up and down
   * @param outsideChart probability that the body lies outside the pattern's sizes
   * @param insideChart whether it more probably lies inside them
   * @param cutVersusRecommended how the size cut compares, or null
   * @param systems the label in published systems, each with its probability
   * @param withheld why no size, or none but larger ones, is named; null where nothing is withheld
   */
  public record SizeAdvice(
      SizeChance recommended,
      List<SizeChance> neighbours,
      List<SizeChance> sisters,
      double outsideChart,
      boolean insideChart,
      String cutVersusRecommended,
      List<SystemLabel> systems,
      String withheld) {}

  /** A size and the probability that the body falls in its ranges. */
  public record SizeChance(String size, double probability) {}

  /** A label in a published system and the probability that it is the right one. */
  public record SystemLabel(String system, String label, double probability) {}

  /**
   * A cloth as tested.
   *
   * @param role "main", "lining" or "support"
   * @param handbookClass class by stretch around, e.g. "stretchy"
   * @param verdict "suits", "marginal", "does not suit" or "no need stated"
   * @param tests stretch, growth and recovery in both directions, fractions with their error
   * @param needs what the pattern asks of this cloth, and the margin
   */
  public record ClothResult(
      String role,
      String handbookClass,
      String verdict,
      List<ClothFigure> tests,
      List<ClothNeed> needs) {}

  /** A measured property of a cloth; value and error are fractions. */
  public record ClothFigure(
      String property, String direction, double value, double plusMinus, String text) {}

  /** A need of the pattern beside what the cloth has; margin = has − need, fractions. */
  public record ClothNeed(
      String property, String direction, double need, double has, double margin, String text) {}

  /**
   * A judgement from numbers.
   *
   * @param holds whether it holds
   * @param says the sentence for what was judged
   * @param trust probability that the judgement is right, given the errors of its numbers
   * @param figures the numbers judged
   * @param limits the parameters they were compared with
   */
  public record FindingNote(
      String id,
      String name,
      boolean holds,
      String says,
      double trust,
      List<FigureNote> figures,
      List<LimitNote> limits,
      RuleRef rule) {}

  /** A derived number: its formula in words with the numbers put in. */
  public record FigureNote(String name, double value, String unit, String text, String formula) {}

  /** A parameter a figure was compared with. */
  public record LimitNote(String parameter, String text, String comparison, String source) {}

  /**
   * A cause and the evidence about it.
   *
   * @param probability that this cause is present, alone or with another
   * @param priorDecibans prior odds of this cause alone against nothing wrong
   * @param posteriorDecibans prior plus all weights: odds of this cause alone against nothing wrong
   * @param evidenceFor reports that speak for it, strongest first
   * @param evidenceAgainst reports that speak against it, strongest first
   */
  public record CauseNote(
      String id,
      String name,
      String says,
      double probability,
      double priorDecibans,
      double posteriorDecibans,
      List<EvidenceNote> evidenceFor,
      List<EvidenceNote> evidenceAgainst,
      RuleRef rule) {}

  /**
   * One report as evidence.
   *
   * @param kind "sign", "finding" or "earlier adjustment"
   * @param present whether it was reported present or denied
   * @param decibans weight of evidence for this cause alone against nothing wrong
   * @param words the weight in plain words
   * @param probabilityWithout the cause's probability had this report not been given, all links
   *     staying as the rules stated them for this fitting
   * @param rules the rules that link them
   */
  public record EvidenceNote(
      String id,
      String name,
      String kind,
      boolean present,
      double decibans,
      String words,
      double probabilityWithout,
      List<RuleRef> rules) {}

  /**
   * One change to make.
   *
   * @param worth expected relief less effort and risk, fraction
   * @param tightens whether it makes anything closer, firmer or shorter than the body
   * @param slackOnly whether it takes up no more than was measured to hang loose; it tightens
   *     nothing then, though it might by another amount
   * @param amount null when the change has no amount or it could not be told
   * @param measureFirst what to measure when the amount could not be told or was estimated, or null
   * @param places piece and line on the pattern, most useful first
   * @param drawing link to the garment's drawing with the first place marked, or null
   * @param cures the causes it treats, with their probability and the share cured
   * @param whyBeforeNext why it comes before the next one; null for the last
   */
  public record AdjustmentNote(
      String id,
      String name,
      String does,
      double worth,
      String stage,
      boolean tightens,
      boolean slackOnly,
      Amount amount,
      String measureFirst,
      List<PlaceNote> places,
      String drawing,
      List<String> steps,
      String check,
      List<SignNote> sideEffects,
      String effort,
      String undo,
      List<String> declineIf,
      String why,
      String whyBeforeNext,
      List<CureNote> cures,
      List<RuleRef> rules) {}

  /**
   * Where on the pattern a change is made.
   *
   * @param piece piece name on the sheet, or null without a sheet
   * @param line trade name of the edge or line
   * @param edges how many edges of this piece the change is made at
   * @param each the change at each edge; null without an amount
   * @param shared whether the amount is split over all edges of the line, or made whole at each
   * @param follows whether the piece is a lining or support that only repeats its main piece
   */
  public record PlaceNote(
      String piece, String line, int edges, Amount each, boolean shared, boolean follows) {}

  /** A change not advised now, and why; the rule is null where computing held it back. */
  public record HeldBackNote(String id, String name, String because, RuleRef rule) {}

  /** A cause an adjustment treats; share is the part of it that goes away. */
  public record CureNote(String cause, double probability, double share) {}

  /**
   * A question worth asking.
   *
   * @param worthBits expected drop in uncertainty about the causes, bits
   * @param ifYes the causes likeliest after yes
   * @param ifNo the causes likeliest after no
   * @param yesMoves the cause that yes makes likelier, or else less likely; null if it moves none
   * @param noMoves the same for no
   * @param photo the photo that would show it, or null where none can or should
   */
  public record QuestionNote(
      String sign,
      String ask,
      String how,
      String effort,
      double worthBits,
      double probabilityYes,
      List<CauseChance> ifYes,
      List<CauseChance> ifNo,
      ShiftNote yesMoves,
      ShiftNote noMoves,
      PhotoNote photo) {}

  /** How far a reply moves a cause: its probability now and after that reply. */
  public record ShiftNote(String id, String name, double from, double to) {}

  /**
   * A photo that would show a sign.
   *
   * @param view "front", "side" or "back"
   * @param pose posture or moment, a word of the catalog: "standing", "flat on the table" …
   * @param says how to take it, a sentence
   */
  public record PhotoNote(String view, String pose, String says) {}

  /** A cause and its probability. */
  public record CauseChance(String id, String name, double probability) {}

  /** A sign as given. Place, side, degree and amount may be null. */
  public record SignNote(
      String id,
      String name,
      boolean present,
      String place,
      String side,
      String degree,
      String amount) {}

  /**
   * Why a cause is not first, and the least that would put it there.
   *
   * @param behind name of the cause that is first instead
   * @param decibansBehind how far its odds lie behind
   * @param nearest the smallest changes in the evidence that would put it first
   */
  public record WhyNotNote(
      String cause,
      String name,
      double probability,
      String behind,
      double decibansBehind,
      List<List<ChangeNote>> nearest) {}

  /** A report to add, reverse or withdraw: {@code change} is "add", "reverse" or "withdraw". */
  public record ChangeNote(String id, String name, String change, boolean present) {}

  /** Something not given; pointer is an RFC 6901 pointer into the request. */
  public record MissingNote(String pointer, String what, String wouldChange) {}

  /** A measurement outside the usual windows. */
  public record MeasureAgainNote(String pointer, String problem, String remedy) {}
}
