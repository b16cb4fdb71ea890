package easewright.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.reading.ReaderSettings.Joining;
import easewright.reading.ReaderSettings.Weights;
import easewright.reading.SeparateOdds;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Fits every number of {@code reader.json} that is fitted, and writes them there: first the three
 * of {@code phrases}, by which the model and the plain reader are mixed, then the weights of {@code
 * joining}, by which both are joined with the words. The bounds stay as they are; {@link
 * JoiningFit} prints those with the best harmonic mean, and what it counts.
 *
 * <p>Arguments: the folder of the model, the sets to fit on, the sets to count on, e.g. {@code
 * src/main/resources/easewright/reading target/held-out posts-strangers/e1}. Fit on posts that
 * neither the model nor the plain reader was trained with: {@code hands.py} writes those held out.
 */
final class ReaderFit {
  private static final Map<String, SignEntry> CATALOG = UsualBook.read().catalog().signs();

  private ReaderFit() {}

  /** Writes to the folder's {@code reader.json}, and tables to standard output. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    Path settings = folder.resolve("reader.json");
    JoiningFit.mayBeFittedOn(arguments[1]);
    double[] mix = mix(folder, arguments[1]);
    String json = Files.readString(settings);
    json = with(json, "phrases", Map.of("bias", mix[0], "model", mix[1], "phrases", mix[2]));
    Files.writeString(settings, json);
    System.out.println("phrases: bias %s, model %s, phrases %s".formatted(mix[0], mix[1], mix[2]));
    Joining joining = JoiningFit.fit(arguments);
    json = with(json, "reported", weights(joining.reported()));
    Files.writeString(settings, with(json, "denied", weights(joining.denied())));
  }

  /**
   * A logistic regression of "the writer reports this sign" over the highest odds of each reader in
   * the post; signs doubtful in a post count neither way.
   *
   * @return bias, weight of the model, weight of the phrases
   */
  private static double[] mix(Path folder, String sets) throws IOException {
    SeparateOdds readers = new SeparateOdds(folder);
    LogisticFit fit = new LogisticFit();
    for (String set : sets.split(",")) {
      for (SignPost post : SignPost.in(set)) {
        readers
            .read(post.text())
            .forEach(
                (sign, odds) -> {
                  if (CATALOG.containsKey(sign) && !post.maybe().contains(sign)) {
                    fit.add(post.present().contains(sign), 1, odds.model(), odds.phrases());
                  }
                });
      }
    }
    double[] mix = fit.weights();
    for (int i = 0; i < mix.length; i++) {
      mix[i] = JoiningFit.rounded(mix[i]);
    }
    return mix;
  }

  private static Map<String, Double> weights(Weights fitted) {
    return Map.of(
        "bias", fitted.bias(),
        "model", fitted.model(),
        "words", fitted.words(),
        "otherwise", fitted.otherwise());
  }

  /** Puts numbers into an object of the file and leaves every other character as it is. */
  static String with(String json, String object, Map<String, Double> numbers) throws IOException {
    Matcher begins = Pattern.compile('"' + object + "\"\\s*:\\s*\\{").matcher(json);
    if (!begins.find()) {
      throw new IllegalArgumentException("reader.json has no \"" + object + '"');
    }
    int end = json.indexOf('}', begins.end());
    String inside = json.substring(begins.end(), end);
    for (Map.Entry<String, Double> one : numbers.entrySet()) {
      String number = "(\"" + one.getKey() + "\"\\s*:\\s*)[-0-9.eE]+";
      Matcher old = Pattern.compile(number).matcher(inside);
      if (!old.find()) {
        throw new IllegalArgumentException(object + " has no " + one.getKey());
      }
      String value = String.format(Locale.ROOT, "%.2f", one.getValue());
      inside = old.replaceFirst("$1" + Matcher.quoteReplacement(value));
    }
    String changed = json.substring(0, begins.end()) + inside + json.substring(end);
    JsonNode read = new ObjectMapper().readTree(changed); // a broken file is never written
    if (!read.isObject()) {
      throw new IllegalArgumentException("reader.json is no object");
    }
    return changed;
  }
}
