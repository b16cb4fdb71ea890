package easewright.intake;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.intake.Reading.SignRead;
import easewright.reading.ReaderSettings;
import easewright.reading.ReaderSettings.Joining;
import easewright.reading.ReaderSettings.Weights;
import easewright.reading.Said;
import easewright.reading.TrainedReader;
import easewright.reading.TrainedReading;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Fits the numbers by which the words and the model are joined, and counts with them.
 *
 * <p>Arguments: the model's folder or "shipped", the sets to fit on, the sets to count on; sets
 * parted by commas, e.g. {@code .enc/standin posts-strangers/e3 posts-strangers/e1}. Fit on posts
 * neither the words nor the model were made with. Sets kept aside may be counted, never fitted on.
 */
final class JoiningFit {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Map<String, SignEntry> CATALOG = BOOK.catalog().signs();
  private static final Intake INTAKE = new Intake(BOOK);

  /** A post as each read it. */
  private record Read(SignPost post, List<SignRead> words, TrainedReading model) {}

  private record Example(double odds, boolean so, boolean notSo, boolean right) {}

  private JoiningFit() {}

  /** Writes the numbers, as {@code reader.json} holds them, and tables to standard output. */
  public static void main(String[] arguments) throws JsonProcessingException {
    fit(arguments);
  }

  /**
   * The same.
   *
   * @return what was fitted
   */
  static Joining fit(String[] arguments) throws JsonProcessingException {
    TrainedReader reader =
        arguments[0].equals("shipped")
            ? TrainedReader.shipped()
            : TrainedReader.in(Path.of(arguments[0]));
    mayBeFittedOn(arguments[1]);
    List<Read> fitted = read(reader, arguments[1]);
    Joining now = fitted.get(0).model().settings().joining();
    Joining both = joining(fitted, now, true);
    Joining modelAlone = joining(fitted, now, false);
    System.out.println(new ObjectMapper().writeValueAsString(both));
    for (String set : arguments[2].split(",")) {
      List<Read> counted = read(reader, set);
      System.out.printf("%n%s, fitted on %s%n%n%s", set, arguments[1], ReadersCount.HEAD);
      ReadersCount words = new ReadersCount(CATALOG);
      counted.forEach(one -> words.add(one.post(), one.words()));
      System.out.print(words.row("words"));
      System.out.print(count(counted, modelAlone, false).row("model"));
      System.out.print(count(counted, now, true).row("both, numbers of reader.json"));
      ReadersCount joined = count(counted, both, true);
      System.out.print(joined.row("both, numbers fitted"));
      System.out.printf("%n%s%n%s", joined.reliability(), dangers(counted, both));
    }
    return both;
  }

  /**
   * @throws IllegalArgumentException for sets that no number may be fitted on
   */
  static void mayBeFittedOn(String sets) {
    if (sets.contains("aside")) {
      throw new IllegalArgumentException("Posts kept aside are counted only.");
    }
  }

  /** What other bounds from which the model raises a danger would miss and stop. */
  private static String dangers(List<Read> counted, Joining joining) {
    StringBuilder table =
        new StringBuilder("| raised from | missed | posts stopped without one |\n|---|---|---|\n");
    for (double bound : new double[] {0.5, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 1.01}) {
      Joining tried =
          new Joining(
              joining.reported(),
              joining.denied(),
              bound,
              joining.dangerShown(),
              joining.dangerLowered(),
              joining.otherDangers(),
              joining.calm(),
              joining.torn(),
              joining.nearDangers());
      ReadersCount count = count(counted, tried, true);
      table.append("| %.2f | %d | %d |%n".formatted(bound, count.dangers.missed, count.stopped));
    }
    return table.toString();
  }

  private static List<Read> read(TrainedReader reader, String sets) {
    List<Read> all = new ArrayList<>();
    for (String set : sets.split(",")) {
      for (SignPost post : SignPost.in(set)) {
        TrainedReading model = reader.read(post.text()).orElseThrow();
        all.add(new Read(post, INTAKE.read(post.text()).signs(), model));
      }
    }
    return all;
  }

  private static ReadersCount count(List<Read> posts, Joining joining, boolean withWords) {
    ReadersCount count = new ReadersCount(CATALOG);
    for (Read one : posts) {
      ReaderSettings old = one.model().settings();
      TrainedReading model =
          new TrainedReading(
              one.model().sentences(), new ReaderSettings(old.signs(), old.limits(), joining));
      count.add(
          one.post(),
          Joined.of(withWords ? one.words() : List.of(), model, CATALOG, any -> true).signs());
    }
    return count;
  }

  private static Joining joining(List<Read> posts, Joining now, boolean withWords) {
    return new Joining(
        fit(examples(posts, true, withWords)),
        fit(examples(posts, false, withWords)),
        now.dangerRaised(),
        now.dangerShown(),
        now.dangerLowered(),
        now.otherDangers(),
        now.calm(),
        now.torn(),
        now.nearDangers());
  }

  private static List<Example> examples(List<Read> posts, boolean present, boolean withWords) {
    List<Example> examples = new ArrayList<>();
    for (Read one : posts) {
      for (String sign : one.model().settings().signs()) {
        if (CATALOG.containsKey(sign)
            && !CATALOG.get(sign).redFlag()
            && !one.post().maybe().contains(sign)) {
          double p =
              one.model().sentences().stream()
                  .map(sentence -> sentence.said(sign))
                  .mapToDouble(present ? Said::reported : Said::denied)
                  .max()
                  .orElse(0);
          examples.add(
              new Example(
                  Weights.odds(p),
                  withWords && isRead(one.words(), sign, present),
                  withWords && isRead(one.words(), sign, !present),
                  (present ? one.post().present() : one.post().denied()).contains(sign)));
        }
      }
    }
    return examples;
  }

  private static boolean isRead(List<SignRead> words, String sign, boolean present) {
    return words.stream().anyMatch(one -> one.id().equals(sign) && one.present() == present);
  }

  /** The weights, with the bounds that give the best harmonic mean of precision and recall. */
  private static Weights fit(List<Example> examples) {
    LogisticFit fit = new LogisticFit();
    examples.forEach(
        one -> fit.add(one.right(), 1, one.odds(), one.so() ? 1 : 0, one.notSo() ? 1 : 0));
    double[] w = Arrays.stream(fit.weights()).map(JoiningFit::rounded).toArray();
    Weights best = null;
    double most = -1;
    for (int added = 4; added <= 18; added++) {
      for (int kept = 0; kept <= added; kept++) {
        Weights tried = new Weights(w[0], w[1], w[2], w[3], added / 20.0, kept / 20.0);
        double score = score(examples, tried);
        if (score > most) {
          most = score;
          best = tried;
        }
      }
    }
    return best;
  }

  private static double score(List<Example> examples, Weights weights) {
    int right = 0;
    int wrong = 0;
    int missed = 0;
    for (Example one : examples) {
      double p = 1 / (1 + Math.exp(-one.odds()));
      boolean read =
          weights.confidence(p, one.so(), one.notSo())
              >= (one.so() ? weights.kept() : weights.added());
      right += read && one.right() ? 1 : 0;
      wrong += read && !one.right() ? 1 : 0;
      missed += !read && one.right() ? 1 : 0;
    }
    return 2.0 * right / Math.max(1, 2 * right + wrong + missed);
  }

  static double rounded(double value) {
    return Math.round(value * 100) / 100.0;
  }
}
