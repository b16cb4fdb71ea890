package easewright.reading;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.reading.ReaderSettings.Weights;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/** What the model and the phrases each read of a text, before they are mixed. */
public final class SeparateOdds {
  private final ReaderSettings settings;
  private final TrainedReader model;
  private final PhraseWeights phrases;

  /**
   * The highest odds of a sign being reported in any sentence, as logarithms.
   *
   * @param model by the model, within the bounds of {@link Weights#odds}
   */
  public record Highest(double model, double phrases) {}

  /**
   * The readers of a folder.
   *
   * @param folder with {@code reader.onnx}, {@code reader.json}, {@code vocabulary.txt} and {@code
   *     phrases.bin}
   * @throws IOException when one of them is missing or broken
   */
  public SeparateOdds(Path folder) throws IOException {
    ReaderFiles files = ReaderFiles.in(folder);
    byte[] all = files.read("reader.json");
    settings = ReaderSettings.parse(all);
    ObjectMapper json = new ObjectMapper();
    byte[] alone = json.writeValueAsBytes(((ObjectNode) json.readTree(all)).without("phrases"));
    model =
        new TrainedReader(
            name ->
                name.equals("reader.json") ? new ByteArrayInputStream(alone) : files.open(name));
    try (InputStream weights = files.open("phrases.bin")) {
      phrases = new PhraseWeights(weights, settings.signs().size(), settings.phrases());
    }
  }

  /** By sign; signs that the phrases do not read are left out. */
  public Map<String, Highest> read(String text) {
    Map<String, Highest> highest = new HashMap<>();
    String before = "";
    for (SentenceSaid one : model.read(text).orElseThrow().sentences()) {
      String sentence = text.substring(one.from(), one.to());
      float[] odds = phrases.odds(sentence, before);
      before = sentence;
      for (int i = 0; i < odds.length; i++) {
        if (!Float.isNaN(odds[i])) {
          String sign = settings.signs().get(i);
          Highest here = new Highest(Weights.odds(one.said(sign).reported()), odds[i]);
          highest.merge(sign, here, SeparateOdds::higher);
        }
      }
    }
    return highest;
  }

  private static Highest higher(Highest one, Highest other) {
    return new Highest(
        Math.max(one.model(), other.model()), Math.max(one.phrases(), other.phrases()));
  }
}
