package easewright.reading;

import ai.onnxruntime.OrtException;
import easewright.deadline.Deadline;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads what the sentences of a text say of each sign, by a trained model. The model is loaded with
 * the first text. Where it is missing, broken or cannot run on this machine, one line of the log
 * says so and nothing is read. Safe to share between threads.
 */
public final class TrainedReader {
  private static final System.Logger LOG = System.getLogger(TrainedReader.class.getName());

  private final ReaderFiles files;
  private Optional<Loaded> loaded;

  private record Loaded(ReaderSettings settings, WordPieces pieces, OnnxModel model) {}

  private TrainedReader(ReaderFiles files) {
    this.files = files;
  }

  /** Reads by the model of this application. */
  public static TrainedReader shipped() {
    return new TrainedReader(ReaderFiles.shipped());
  }

  /**
   * Reads by a model on trial: {@code reader.onnx}, {@code reader.json}, {@code vocabulary.txt}.
   */
  public static TrainedReader in(Path folder) {
    return new TrainedReader(ReaderFiles.in(folder));
  }

  /**
   * What the sentences of a text say, in order.
   *
   * @param text of any length; time and work grow with it
   * @return nothing where the model cannot be used; an empty text has no sentences
   * @throws easewright.deadline.DeadlinePassed when the thread's time is over
   */
  public Optional<TrainedReading> read(String text) {
    return loaded().flatMap(model -> read(text, model));
  }

  private Optional<TrainedReading> read(String text, Loaded with) {
    List<SentenceSaid> sentences = new ArrayList<>();
    for (Passage passage : Passage.of(text, with.pieces, with.settings.limits())) {
      Deadline.check();
      try {
        float[][][] said = with.model.said(passage);
        for (int i = 0; i < said.length; i++) {
          Stretch at = passage.sentences().get(i).at();
          sentences.add(new SentenceSaid(at.from(), at.to(), named(said[i], with.settings)));
        }
      } catch (OrtException e) {
        giveUp(e);
        return Optional.empty();
      }
    }
    return Optional.of(new TrainedReading(sentences, with.settings));
  }

  private static Map<String, Said> named(float[][] said, ReaderSettings settings) {
    Map<String, Said> named = new HashMap<>();
    for (int k = 0; k < said.length; k++) {
      named.put(settings.signs().get(k), new Said(said[k][0], said[k][1], said[k][2]));
    }
    return named;
  }

  private synchronized Optional<Loaded> loaded() {
    if (loaded == null) {
      loaded = load();
    }
    return loaded;
  }

  /** A missing native library shows as an error of linking, whatever its cause. */
  private Optional<Loaded> load() {
    try {
      ReaderSettings settings = ReaderSettings.parse(files.read("reader.json"));
      String vocabulary = new String(files.read("vocabulary.txt"), StandardCharsets.UTF_8);
      OnnxModel model = new OnnxModel(files.read("reader.onnx"), settings.signs().size());
      return Optional.of(new Loaded(settings, new WordPieces(vocabulary), model));
    } catch (IOException | OrtException | RuntimeException | LinkageError e) {
      warn(e);
      return Optional.empty();
    }
  }

  /** A model that fails once is not asked again, so that the log holds one line. */
  private synchronized void giveUp(OrtException e) {
    if (loaded.isPresent()) {
      loaded = Optional.empty();
      warn(e);
    }
  }

  private static void warn(Throwable e) {
    LOG.log(
        System.Logger.Level.WARNING,
        "The trained reader is off, posts are read by words alone: " + e);
  }
}
