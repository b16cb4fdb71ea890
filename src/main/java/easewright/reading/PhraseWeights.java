package easewright.reading;

import easewright.reading.ReaderSettings.Phrases;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A second, plain reader: logistic regression over stems, pairs of stems and the stems of the
 * sentence before. It knows no order and no meaning, but it errs elsewhere than the model does, so
 * both together read better than either. {@code src/training/reader/phrases.py} trains it and
 * writes its file. Immutable.
 */
final class PhraseWeights {
  private static final Pattern TOKEN = Pattern.compile("[a-z]+(?:'[a-z]+)?|[0-9]+");
  private static final String NUMBER = "#";
  private static final int LEAST_STEM = 3;
  private static final int FNV_START = 0x811C9DC5;
  private static final int FNV_PRIME = 0x01000193;

  private final Phrases settings;
  private final float[] bias;
  private final float step;

  /** Hashes of the features, in rising order. */
  private final int[] features;

  /** Where the weights of each feature begin; one more marks the end. */
  private final int[] begins;

  private final short[] columns;
  private final byte[] steps;

  /**
   * @throws IOException when the file ends too soon
   * @throws IllegalArgumentException when it is for another number of signs
   */
  PhraseWeights(InputStream file, int signs, Phrases settings) throws IOException {
    this.settings = settings;
    DataInputStream in = new DataInputStream(file);
    bias = new float[in.readInt()];
    if (bias.length != signs) {
      throw new IllegalArgumentException("The phrases do not read " + signs + " signs.");
    }
    for (int i = 0; i < bias.length; i++) {
      bias[i] = in.readFloat();
    }
    step = in.readFloat();
    features = new int[in.readInt()];
    begins = new int[features.length + 1];
    columns = new short[in.readInt()];
    steps = new byte[columns.length];
    for (int i = 0; i < features.length; i++) {
      features[i] = in.readInt();
      begins[i + 1] = begins[i] + in.readUnsignedShort();
      for (int k = begins[i]; k < begins[i + 1]; k++) {
        columns[k] = in.readShort();
        steps[k] = in.readByte();
      }
    }
  }

  /**
   * The same probabilities, where what a sentence reports is read by its phrases too. Dangers,
   * which the phrases don't read, stay as the model read them.
   *
   * @param said three for each sign, as the model gives them
   * @param before the sentence before, or ""
   */
  float[] with(float[] said, String sentence, String before) {
    float[] odds = odds(sentence, before);
    float[] mixed = said.clone();
    for (int i = 0; i < odds.length; i++) {
      if (!Float.isNaN(odds[i])) {
        int at = i * SentenceSaid.STATES;
        mixed[at] = (float) settings.mixed(said[at], odds[i]);
      }
    }
    return mixed;
  }

  /** The logarithm of the odds that each sign is reported; no number where it isn't read. */
  float[] odds(String sentence, String before) {
    Set<String> own = own(sentence);
    int[] sums = new int[bias.length];
    own.forEach(one -> add(one, sums));
    before(before).forEach(one -> add(one, sums));
    double share = step / Math.sqrt(Math.max(1, own.size()));
    float[] odds = bias.clone();
    for (int i = 0; i < odds.length; i++) {
      odds[i] += (float) (sums[i] * share);
    }
    return odds;
  }

  /** The features of a sentence: its stems, and pairs of those that tell something. */
  Set<String> own(String sentence) {
    List<String> stems = stems(sentence);
    Set<String> own = new HashSet<>();
    stems.forEach(one -> own.add("u " + one));
    List<String> telling = stems.stream().filter(one -> !settings.small().contains(one)).toList();
    for (int i = 1; i < telling.size(); i++) {
      own.add("b " + telling.get(i - 1) + " " + telling.get(i));
    }
    for (int i = 2; i < telling.size(); i++) {
      own.add("s " + telling.get(i - 2) + " " + telling.get(i));
    }
    return own;
  }

  /** The features that the sentence before gives. */
  Set<String> before(String sentence) {
    Set<String> before = new HashSet<>();
    for (String one : stems(sentence)) {
      if (!settings.small().contains(one)) {
        before.add("c " + one);
      }
    }
    return before;
  }

  private void add(String feature, int[] sums) {
    int at = Arrays.binarySearch(features, hash(feature));
    for (int k = at < 0 ? 0 : begins[at]; at >= 0 && k < begins[at + 1]; k++) {
      sums[columns[k]] += steps[k];
    }
  }

  /** Fowler, Noll and Vo, FNV-1a with 32 bits (RFC 9923). */
  static int hash(String feature) {
    int hash = FNV_START;
    for (byte one : feature.getBytes(StandardCharsets.UTF_8)) {
      hash = (hash ^ (one & 0xFF)) * FNV_PRIME;
    }
    return hash;
  }

  private List<String> stems(String text) {
    List<String> stems = new ArrayList<>();
    Matcher token = TOKEN.matcher(text.toLowerCase(Locale.ROOT).replace('\u2019', '\''));
    while (token.find()) {
      stems.add(stem(token.group()));
    }
    return stems;
  }

  private String stem(String word) {
    if (Character.isDigit(word.charAt(0))) {
      return NUMBER;
    }
    for (String ending : settings.endings()) {
      if (word.endsWith(ending) && word.length() - ending.length() >= LEAST_STEM) {
        return word.substring(0, word.length() - ending.length());
      }
    }
    return word;
  }
}
