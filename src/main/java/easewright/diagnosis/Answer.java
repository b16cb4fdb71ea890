package easewright.diagnosis;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonView;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

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
 * @param afterwards in danger, the change that room is made by once it has passed; null where the
 *     danger does not come from the fit, where the cause is not clear, and without danger
 * @param asked what the wearer asked whether to do, each answered in a sentence; empty in danger
 * @param size the recommended size; null without bust and underbust, or in danger
 * @param cloth one verdict for each cloth tested
 * @param findings what the numbers say, whether it holds or not
 * @param causes causes worth mentioning, most probable first
 * @param clear whether the first cause is likely enough to change something for; if not, ask first
 * @param nothingWrong probability that the garment has none of the known faults; null in danger
 * @param noFault that nothing reported is a fault, in a sentence; null where something may be one
 * @param tried changes made before this try-on that did not help, in the order made
 * @param adjustments what to change, in the order to try it
 * @param trial what to try, easily undone, where no cause is sure enough for a change; null where
 *     there is nothing of the kind
 * @param heldBack changes that would treat a likely cause but are not advised now, and why
 * @param questions what to ask next, the most worthwhile first
 * @param unexplained signs reported that no likely cause explains
 * @param whyNot answers to the causes the asker named
 * @param missing what was not given, and what it would change
 * @param measureAgain measurements that are unlikely, and why
 * @param reply the answer as one would post it, paragraph by paragraph
 * @param soFar the request to go on from, in the form it was sent; null where none was read
 * @param read what was read from the request's text, and where it stands; null without a text
 */
public record Answer(
    RuleBookStamp ruleBook,
    Understood understood,
    List<CautionNote> cautions,
    String notNow,
    AdjustmentNote afterwards,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<AskedNote> asked,
    SizeAdvice size,
    @JsonView(Full.class) List<ClothResult> cloth,
    @JsonView(Full.class) List<FindingNote> findings,
    List<CauseNote> causes,
    boolean clear,
    @JsonView(Full.class) Double nothingWrong,
    String noFault,
    List<FailedNote> tried,
    List<AdjustmentNote> adjustments,
    TrialNote trial,
    List<HeldBackNote> heldBack,
    List<QuestionNote> questions,
    List<SignNote> unexplained,
    List<WhyNotNote> whyNot,
    @JsonView(Full.class) List<MissingNote> missing,
    List<MeasureAgainNote> measureAgain,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> reply,
    JsonNode soFar,
    JsonNode read) {

  public Answer {
    asked = asked == null ? List.of() : asked; // left out of a kept answer where nothing was asked
    reply = reply == null ? List.of() : reply;
  }

  /** An answer that is about a danger, and about the fit only for afterwards. */
  static Answer ofDanger(
      RuleBookStamp ruleBook,
      Understood understood,
      List<CautionNote> cautions,
      String notNow,
      AdjustmentNote afterwards) {
    return new Answer(
        ruleBook,
        understood,
        cautions,
        notNow,
        afterwards,
        List.of(),
        null,
        List.of(),
        List.of(),
        List.of(),
        false,
        null,
        null,
        List.of(),
        List.of(),
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

  /** Whether a danger comes before the fit. */
  @JsonIgnore
  public boolean isDanger() {
    return !cautions.isEmpty() && cautions.get(0).isDanger();
  }

  /**
   * How the answer stands: "danger" where one comes before the fit; "clear" where the first cause
   * is likely enough for a change; "open" where a few causes are possible; "untold" where too many
   * are to name any; "no-fault" where nothing reported is a fault; "no-signs" where none was
   * reported.
   */
  @JsonProperty("verdict")
  public String verdict() {
    if (isDanger()) {
      return "danger";
    }
    if (noFault != null) {
      return "no-fault";
    }
    if (!causes.isEmpty()) {
      return clear ? "clear" : "open";
    }
    return understood.signs().isEmpty() ? "no-signs" : "untold";
  }

  /** The first change that makes nothing closer, where the cause is clear; null otherwise. */
  AdjustmentNote roomier() {
    return adjustments.stream()
        .filter(one -> clear && !one.tightens() && !one.cures().isEmpty())
        .findFirst()
        .orElse(null);
  }

  /** Other ways to treat the cause that the first change treats. */
  public List<AdjustmentNote> instead() {
    return used("instead");
  }

  /** Changes that treat other causes, on later toiles. */
  public List<AdjustmentNote> later() {
    return used("later");
  }

  private List<AdjustmentNote> used(String how) {
    return adjustments.stream().filter(one -> one.use().equals(how)).toList();
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

  /** Questions for the place of what the text says is seen, and not where. */
  public List<String> where() {
    return read == null ? List.of() : read.path("notUnderstood").findValuesAsText("where");
  }

  /** The same answer about a danger, with a question about it. */
  public Answer asking(String question) {
    return ofDanger(ruleBook, understood, cautions, notNow + " " + question, afterwards)
        .goingOnFrom(soFar, read);
  }

  /** The same answer with the reply to post. */
  public Answer saying(List<String> reply) {
    return with(reply, soFar, read);
  }

  /** The same answer with the request to send back, and what was read from its text. */
  public Answer goingOnFrom(JsonNode soFar, JsonNode read) {
    return with(reply, soFar, read);
  }

  private Answer with(List<String> reply, JsonNode soFar, JsonNode read) {
    return new Answer(
        ruleBook,
        understood,
        cautions,
        notNow,
        afterwards,
        asked,
        size,
        cloth,
        findings,
        causes,
        clear,
        nothingWrong,
        noFault,
        tried,
        adjustments,
        trial,
        heldBack,
        questions,
        unexplained,
        whyNot,
        missing,
        measureAgain,
        reply,
        soFar,
        read);
  }

  /** What only a full answer holds; a lean one leaves out each component of this view. */
  public interface Full {}

  /**
   * The rules an answer was made with.
   *
   * @param version the rule book's version, its last change
   * @param hash SHA-256 over rules, parameters and catalog
   */
  public record RuleBookStamp(String version, @JsonView(Full.class) String hash) {}

  /**
   * The request as understood.
   *
   * @param units "metric" or "imperial": how lengths are written in this answer
   * @param family id of the family of garments whose rules were asked
   * @param sheet the pattern sheet's id, or null
   * @param sizeCut the size that was cut, or null
   * @param sizeSystem what the size cut was taken for without a sheet; null if it is no label
   * @param garment what was measured of the toile; null if nothing was
   * @param design what is known of the pattern without a sheet; null if nothing is
   * @param body each measurement given, with its error
   * @param signs every sign given, with the words the rule book knows it by
   * @param fine areas in which all is well, or null where none was named
   * @param tried earlier changes, earlier sizes and trials, or null where there were none
   */
  public record Understood(
      String units,
      String family,
      String sheet,
      String sizeCut,
      SizeSystemNote sizeSystem,
      @JsonView(Full.class) List<SaidNote> garment,
      @JsonView(Full.class) List<SaidNote> design,
      @JsonView(Full.class) List<Measurement> body,
      List<SignNote> signs,
      @JsonView(Full.class) List<String> fine,
      @JsonView(Full.class) List<TriedAsGiven> tried) {

    /** Whether there is nothing to say back. */
    @JsonIgnore
    public boolean isEmpty() {
      return Stream.of(sheet, sizeCut, garment, design, fine, tried).allMatch(Objects::isNull)
          && body.isEmpty()
          && signs.isEmpty();
    }
  }

  /**
   * A change that the wearer asked about.
   *
   * @param id the adjustment's; null where a caution lets nothing of the kind be named
   * @param name the same in words; null with the id
   * @param verdict "yes", "slack-only", "perhaps", "instead", "later", "not-now", "not-tighter" or
   *     "untold"
   * @param says the answer in a sentence or two
   */
  public record AskedNote(String id, String name, String verdict, String says) {}

  /**
   * Something tried, as understood.
   *
   * @param adjustment its id; null for an earlier toile in another size
   * @param size the size of an earlier toile; null for a change
   * @param name the change or the size, in words
   * @param how "held", "pinned", "basted" or "worn" for a trial with nothing cut, "measured" for an
   *     amount with nothing tried; else null
   * @param amount as it was given, in the asker's units, or null
   * @param outcome "right", "better", "same" or "worse", or null
   * @param better names of the signs that got better, or null
   * @param worse names of the signs that got worse, or null
   */
  public record TriedAsGiven(
      String adjustment,
      String size,
      String name,
      String how,
      String amount,
      String outcome,
      List<String> better,
      List<String> worse) {}

  /**
   * What a size label was taken for.
   *
   * @param system the region, e.g. "eu"; null where none was taken
   * @param because "named", "fits", "usual" or "open"
   * @param says it and why, in words
   */
  public record SizeSystemNote(String system, String because, String says) {}

  /**
   * Something said back in words.
   *
   * @param name what it is
   * @param text what was said of it, lengths in the asker's units
   */
  public record SaidNote(String name, String text) {}

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
      @JsonView(Full.class) double plusMinusMm,
      @JsonView(Full.class) String plusMinus,
      @JsonView(Full.class) String method,
      @JsonView(Full.class) String working,
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
      @JsonView(Full.class) List<String> because,
      @JsonView(Full.class) RuleRef rule) {

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
   * @param tapeError the error that these probabilities assume
   * @param alsoCalled what the pattern's sheet also calls the recommended size
   * @param shared that the girths belong to several sizes alike; null where they do not
   * @param hint which other places may have been measured; null where nothing suggests it
   * @param sides the two sides, where the size follows the larger one; otherwise null
   */
  public record SizeAdvice(
      SizeChance recommended,
      @JsonView(Full.class) List<SizeChance> neighbours,
      @JsonView(Full.class) List<SizeChance> sisters,
      @JsonView(Full.class) double outsideChart,
      @JsonView(Full.class) boolean insideChart,
      String cutVersusRecommended,
      @JsonView(Full.class) List<SystemLabel> systems,
      String withheld,
      @JsonView(Full.class) TapeErrorNote tapeError,
      @JsonView(Full.class) @JsonInclude(JsonInclude.Include.NON_EMPTY)
          List<SizeNameNote> alsoCalled,
      String shared,
      String hint,
      SidesNote sides) {}

  /**
   * Another name of a size.
   *
   * @param region where it is called so; null for everywhere
   */
  public record SizeNameNote(String region, String label) {}

  /**
   * Sides that differ.
   *
   * @param larger "left" or "right"
   * @param byMm how much more it measures from breastbone to spine
   */
  public record SidesNote(String larger, double byMm, String says) {}

  /**
   * The error of the tape that probabilities of sizes assume, in mm, one standard deviation.
   *
   * @param bustMm of the bust
   * @param underbustMm of the underbust; null where the size goes by the bust alone
   */
  public record TapeErrorNote(double bustMm, Double underbustMm, String says) {}

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
      @JsonView(Full.class) List<FigureNote> figures,
      @JsonView(Full.class) List<LimitNote> limits,
      @JsonView(Full.class) RuleRef rule) {}

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
      @JsonView(Full.class) double priorDecibans,
      @JsonView(Full.class) double posteriorDecibans,
      List<EvidenceNote> evidenceFor,
      List<EvidenceNote> evidenceAgainst,
      @JsonView(Full.class) RuleRef rule) {}

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
      @JsonView(Full.class) String kind,
      boolean present,
      @JsonView(Full.class) double decibans,
      String words,
      @JsonView(Full.class) double probabilityWithout,
      @JsonView(Full.class) List<RuleRef> rules) {}

  /**
   * One change to make.
   *
   * @param use "first"; "instead" where it cures the same cause in another way; "later", on another
   *     toile, where it cures another cause
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
      String use,
      String does,
      @JsonView(Full.class) double worth,
      @JsonView(Full.class) String stage,
      boolean tightens,
      @JsonView(Full.class) boolean slackOnly,
      Amount amount,
      String measureFirst,
      List<PlaceNote> places,
      String drawing,
      List<String> steps,
      String check,
      @JsonView(Full.class) List<SignNote> sideEffects,
      @JsonView(Full.class) String effort,
      @JsonView(Full.class) String undo,
      List<String> declineIf,
      @JsonView(Full.class) String why,
      @JsonView(Full.class) String whyBeforeNext,
      @JsonView(Full.class) List<CureNote> cures,
      @JsonView(Full.class) List<RuleRef> rules) {}

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
      String piece,
      String line,
      int edges,
      Amount each,
      @JsonView(Full.class) boolean shared,
      @JsonView(Full.class) boolean follows) {}

  /**
   * A change made before this try-on that did not help.
   *
   * @param amount by how much, in the asker's units; null when not said
   * @param outcome "same" or "worse"
   * @param says the same in a sentence
   */
  public record FailedNote(String id, String name, String amount, String outcome, String says) {}

  /**
   * A trial of a change that is not advised yet. Nothing is cut for it, and what it shows can be
   * sent back as one of the request's trials.
   *
   * @param id the adjustment that is tried
   * @param name the same in words
   * @param cause the cause that it would show: the likeliest, or one almost as likely whose amount
   *     was measured
   * @param causeName the same in words
   * @param probability of that cause
   * @param amount how much to try; null where it has no amount, or none can be told
   * @param tightens whether what is tried makes anything closer, firmer or shorter
   * @param does what to do, a clause
   * @param shows what is seen then where it is this cause, a clause
   */
  public record TrialNote(
      String id,
      String name,
      String cause,
      String causeName,
      double probability,
      Amount amount,
      boolean tightens,
      String does,
      String shows) {}

  /** A change not advised now, and why; the rule is null where computing held it back. */
  public record HeldBackNote(
      String id, String name, String because, @JsonView(Full.class) RuleRef rule) {}

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
   * @param confirms true where it asks whether a text was read right, else null
   */
  public record QuestionNote(
      String sign,
      String ask,
      String how,
      @JsonView(Full.class) String effort,
      @JsonView(Full.class) double worthBits,
      @JsonView(Full.class) double probabilityYes,
      @JsonView(Full.class) List<CauseChance> ifYes,
      @JsonView(Full.class) List<CauseChance> ifNo,
      @JsonView(Full.class) ShiftNote yesMoves,
      @JsonView(Full.class) ShiftNote noMoves,
      @JsonView(Full.class) PhotoNote photo,
      Boolean confirms) {}

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

  /**
   * A sign as given. Place, side, degree, amount and times may be null.
   *
   * @param oftenHarmless true where it is often so with nothing wrong; null where that is not said
   */
  public record SignNote(
      String id,
      String name,
      boolean present,
      @JsonView(Full.class) String place,
      @JsonView(Full.class) String side,
      @JsonView(Full.class) String degree,
      String amount,
      @JsonView(Full.class) List<String> when,
      @JsonView(Full.class) Boolean oftenHarmless) {}

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
      @JsonView(Full.class) double decibansBehind,
      @JsonView(Full.class) List<List<ChangeNote>> nearest) {}

  /** A report to add, reverse or withdraw: {@code change} is "add", "reverse" or "withdraw". */
  public record ChangeNote(String id, String name, String change, boolean present) {}

  /** Something not given; pointer is an RFC 6901 pointer into the request. */
  public record MissingNote(String pointer, String what, String wouldChange) {}

  /** A measurement outside the usual windows. */
  public record MeasureAgainNote(String pointer, String problem, String remedy) {}
}
