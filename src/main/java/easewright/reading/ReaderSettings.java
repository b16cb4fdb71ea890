package easewright.reading;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * The numbers that go with a trained model, kept in {@code reader.json} beside it.
 *
 * @param signs ids of the signs in the order of the model's output
 * @param limits how much the model is given at once
 * @param joining how its reading is joined with that of the words
 * @param phrases how sentences are read by their phrases too; null where the model reads alone
 * @param changes columns of the model's second output, which tells of changes; empty without one
 * @param alike groups of changes that come to the same, and are hardly told apart in a post
 * @param amounts changes that the model's third output names, which tells what a length is the
 *     amount of; empty without one
 * @param questions columns of the model's fourth output, which tells what a sentence asks: a kind,
 *     or a kind and what it is about, such as "size:larger"; empty without one
 */
public record ReaderSettings(
    List<String> signs,
    Limits limits,
    Joining joining,
    Phrases phrases,
    List<String> changes,
    List<List<String>> alike,
    List<String> amounts,
    List<String> questions) {
  public ReaderSettings {
    signs = List.copyOf(signs);
    Objects.requireNonNull(limits);
    Objects.requireNonNull(joining);
    changes = changes == null ? List.of() : List.copyOf(changes);
    alike = alike == null ? List.of() : List.copyOf(alike);
    amounts = amounts == null ? List.of() : List.copyOf(amounts);
    questions = questions == null ? List.of() : List.copyOf(questions);
    if (!changes.isEmpty() && !ChangeSaid.areColumns(changes)) {
      throw new IllegalArgumentException("The changes of the model end in unknown columns.");
    }
  }

  /**
   * How much the model is given at once.
   *
   * @param pieces most word pieces, at most as many as the model has places
   * @param piecesOfSentence most pieces of a sentence; a longer one is read in parts
   * @param piecesOfContext pieces of what went before, given again where a text is read in parts
   * @param sentences most sentences, since memory and time grow with them
   */
  public record Limits(int pieces, int piecesOfSentence, int piecesOfContext, int sentences) {
    /** A sentence, its context, the start and two ends must fit. */
    public Limits {
      if (pieces < piecesOfSentence + piecesOfContext + 3
          || piecesOfSentence < 1
          || piecesOfContext < 0
          || sentences < 1) {
        throw new IllegalArgumentException("The limits do not leave room for a sentence.");
      }
    }
  }

  /** The changes that come to the same as this one, itself among them. */
  public List<String> alike(String change) {
    return alike.stream()
        .filter(group -> group.contains(change))
        .findFirst()
        .orElse(List.of(change));
  }

  /** Settings of a model that reads alone. */
  public ReaderSettings(List<String> signs, Limits limits, Joining joining) {
    this(signs, limits, joining, null, List.of(), List.of(), List.of(), List.of());
  }

  /**
   * How phrases are taken from a sentence and mixed with what the model read: a logistic regression
   * over the odds by both.
   *
   * @param endings cut off a word, the first that leaves three letters
   * @param small stems that belong to no pair
   */
  public record Phrases(
      List<String> endings, Set<String> small, double bias, double model, double phrases) {
    public Phrases {
      endings = List.copyOf(endings);
      small = Set.copyOf(small);
    }

    double mixed(double probability, double oddsByPhrases) {
      double sum = bias + model * Weights.odds(probability) + phrases * oddsByPhrases;
      return 1 / (1 + Math.exp(-sum));
    }
  }

  /**
   * How readings are joined.
   *
   * @param reported of signs said to be so
   * @param denied of signs said not to be so
   * @param dangerRaised a danger is raised from this probability of being reported
   * @param dangerShown from this probability of being reported or doubtful, a person is to read it
   * @param dangerLowered below this probability of being reported or doubtful in every sentence, a
   *     danger that only the words read is for a person to read and stops nothing
   * @param otherDangers nothing is lowered where any danger of the text, or a sign near one,
   *     reaches this probability
   * @param calm where no danger of the text, nor a sign near one, reaches this probability of being
   *     reported, nor {@code dangerLowered} of being reported or doubtful, what the words alone
   *     take for a possible danger is marked as not understood and withholds no advice; 0 where it
   *     always does
   * @param torn a sentence that reports a sign at least so probably does not deny it, unless the
   *     words do
   * @param nearDangers signs that are no danger by themselves and are told in the words of one
   */
  public record Joining(
      Weights reported,
      Weights denied,
      double dangerRaised,
      double dangerShown,
      double dangerLowered,
      double otherDangers,
      double calm,
      double torn,
      Set<String> nearDangers) {
    public Joining {
      if (torn <= 0) {
        throw new IllegalArgumentException("\"torn\" is missing from the joining.");
      }
      nearDangers = Set.copyOf(nearDangers);
      Objects.requireNonNull(reported);
      Objects.requireNonNull(denied);
    }
  }

  /**
   * A logistic regression: confidence = 1 / (1 + exp(-(bias + model · ln(p / (1 - p)) + words +
   * otherwise))), where the last two count only if the words read it so, or the contrary.
   *
   * @param added least confidence at which a sign is added that only the model read
   * @param kept least confidence at which a sign is kept that the words read
   */
  public record Weights(
      double bias, double model, double words, double otherwise, double added, double kept) {
    /** Keeps the logarithm finite. */
    private static final double LEAST = 1e-4;

    /**
     * The confidence of a reading.
     *
     * @param probability the model's, from 0 to 1
     * @param byWords whether the words read it so
     * @param otherwiseByWords whether the words read the contrary
     */
    public double confidence(double probability, boolean byWords, boolean otherwiseByWords) {
      return 1 / (1 + Math.exp(-sum(odds(probability), byWords, otherwiseByWords)));
    }

    private double sum(double odds, boolean byWords, boolean otherwiseByWords) {
      return bias + model * odds + (byWords ? words : 0) + (otherwiseByWords ? otherwise : 0);
    }

    /** The logarithm of the odds, within bounds. */
    public static double odds(double probability) {
      double p = Math.min(1 - LEAST, Math.max(LEAST, probability));
      return Math.log(p / (1 - p));
    }
  }

  static ReaderSettings parse(byte[] json) throws IOException {
    return new ObjectMapper().readValue(json, ReaderSettings.class);
  }
}
