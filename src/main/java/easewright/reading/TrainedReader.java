package easewright.reading;

import ai.onnxruntime.OrtException;
import easewright.deadline.Deadline;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Reads what the sentences of a text say of each sign, by a trained model and by their phrases.
 * Both are loaded with the first text. Where it is missing, broken or cannot run on this machine,
 * one line of the log says so and nothing is read. Safe to share between threads.
 */
public final class TrainedReader {
  private static final System.Logger LOG = System.getLogger(TrainedReader.class.getName());

  private static final Pattern WORD = Pattern.compile("\\p{L}{3}");

  private final ReaderFiles files;
  private Optional<Loaded> loaded;

  /**
   * @param phrases null where the model reads alone
   */
  private record Loaded(
      ReaderSettings settings,
      Map<String, Integer> places,
      WordPieces pieces,
      OnnxModel model,
      PhraseWeights phrases) {}

  TrainedReader(ReaderFiles files) {
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
    return read(text, List.of());
  }

  /**
   * The same, with what these numbers of the text give the amount of.
   *
   * @param numbers in the order of the text; those that reach over the end of a sentence are passed
   *     over
   */
  public Optional<TrainedReading> read(String text, List<TextPlace> numbers) {
    return loaded().flatMap(model -> read(text, numbers, model));
  }

  private Optional<TrainedReading> read(String text, List<TextPlace> numbers, Loaded with) {
    List<SentenceSaid> sentences = new ArrayList<>();
    List<LengthSaid> lengths = new ArrayList<>();
    String before = "";
    for (Passage passage : Passage.of(text, numbers, with.pieces, with.settings.limits())) {
      Deadline.check();
      try {
        OnnxModel.Read read = with.model.said(passage);
        for (int i = 0; i < read.signs().size(); i++) {
          TextPlace at = passage.sentences().get(i).at();
          String sentence = text.substring(at.from(), at.to());
          float[] both = both(read.signs().get(i), sentence, before, with.phrases);
          ChangeSaid change =
              read.changes().isEmpty()
                  ? null
                  : new ChangeSaid(with.settings.changes(), read.changes().get(i));
          QuestionsSaid questions =
              read.questions().isEmpty()
                  ? QuestionsSaid.NONE
                  : new QuestionsSaid(with.settings.questions(), read.questions().get(i));
          sentences.add(new SentenceSaid(at.from(), at.to(), with.places, both, change, questions));
          before = sentence;
        }
        for (int i = 0; i < read.lengths().size(); i++) {
          TextPlace at = passage.numbers().get(i).at();
          lengths.add(new LengthSaid(at, with.settings.amounts(), read.lengths().get(i)));
        }
      } catch (OrtException e) {
        giveUp(e);
        return Optional.empty();
      }
    }
    return Optional.of(new TrainedReading(sentences, lengths, with.settings));
  }

  private Optional<Loaded> loaded() {
    return Deadline.uncounted(this::loadedOnce);
  }

  private synchronized Optional<Loaded> loadedOnce() {
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
      WordPieces pieces = new WordPieces(vocabulary);
      try (InputStream model = files.open("reader.onnx")) {
        return Optional.of(
            new Loaded(
                settings,
                SentenceSaid.places(settings.signs()),
                pieces,
                new OnnxModel(model, columns(settings)),
                phrases(settings)));
      }
    } catch (IOException | OrtException | RuntimeException | LinkageError e) {
      warn(e);
      return Optional.empty();
    }
  }

  private static OnnxModel.Columns columns(ReaderSettings settings) {
    return new OnnxModel.Columns(
        settings.signs().size(),
        settings.changes().size(),
        settings.questions().size(),
        settings.amounts().isEmpty() ? 0 : LengthSaid.columns(settings.amounts().size()));
  }

  /** A size or a number alone says nothing of any sign, whatever the model makes of its letters. */
  private static float[] both(float[] said, String sentence, String before, PhraseWeights phrases) {
    if (!WORD.matcher(sentence).find()) {
      return new float[said.length];
    }
    return phrases == null ? said : phrases.with(said, sentence, before);
  }

  private PhraseWeights phrases(ReaderSettings settings) throws IOException {
    if (settings.phrases() == null) {
      return null;
    }
    try (InputStream weights = new BufferedInputStream(files.open("phrases.bin"))) {
      return new PhraseWeights(weights, settings.signs().size(), settings.phrases());
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
