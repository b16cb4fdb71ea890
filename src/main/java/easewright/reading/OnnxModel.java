package easewright.reading;

import ai.onnxruntime.NodeInfo;
import ai.onnxruntime.OnnxTensor;
import ai.onnxruntime.OnnxValue;
import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtException;
import ai.onnxruntime.OrtLoggingLevel;
import ai.onnxruntime.OrtSession;
import ai.onnxruntime.TensorInfo;
import easewright.deadline.Deadline;
import java.io.IOException;
import java.io.InputStream;
import java.nio.FloatBuffer;
import java.nio.LongBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * A model in the memory of ONNX Runtime, for as long as the process lives; {@code
 * src/training/reader/export.py} says what goes in and comes out. Threads may use it at once, each
 * reading in its own.
 */
final class OnnxModel {
  /** What reading takes besides the model grows with the readings at once, tens of MB each. */
  private static final int MOST_AT_ONCE = 4;

  private static final long PATIENCE_MS = 20;
  private static final String SIGNS = "said";
  private static final String CHANGES = "changes";
  private static final String LENGTHS = "lengths";
  private static final String QUESTIONS = "questions";

  private final OrtEnvironment environment;
  private final OrtSession session;
  private final Set<String> outputs;
  private final Semaphore free =
      new Semaphore(Math.min(MOST_AT_ONCE, Runtime.getRuntime().availableProcessors()), true);

  /**
   * What the model says of each sentence and each number of a passage.
   *
   * @param signs the probabilities of every sign: reported, denied, doubtful
   * @param changes those of every column about changes; empty where it does not read them
   * @param questions those of every column about questions; empty likewise
   * @param lengths for each number those of every column about lengths; empty likewise
   */
  record Read(
      List<float[]> signs, List<float[]> changes, List<float[]> questions, List<float[]> lengths) {}

  /**
   * How many columns of each output are to be read; 0 where an output is not.
   *
   * @param signs at least 1
   */
  record Columns(int signs, int changes, int questions, int lengths) {}

  /**
   * Loads a model. It goes through a temporary file, since a heap that held it once would stay as
   * large.
   *
   * @throws OrtException when it is no model
   * @throws IOException when it cannot be read or there is no room for it
   * @throws IllegalArgumentException when it has other columns
   */
  OnnxModel(InputStream model, Columns columns) throws OrtException, IOException {
    environment =
        OrtEnvironment.getEnvironment(OrtLoggingLevel.ORT_LOGGING_LEVEL_ERROR, "easewright");
    environment.setTelemetry(false);
    Path file = Files.createTempFile("easewright-reader", ".onnx");
    try (OrtSession.SessionOptions options = new OrtSession.SessionOptions()) {
      options.setIntraOpNumThreads(1);
      options.setInterOpNumThreads(1);
      // What it needs varies with each text, so patterns would not be met again.
      options.setMemoryPatternOptimization(false);
      Files.copy(model, file, StandardCopyOption.REPLACE_EXISTING);
      session = environment.createSession(file.toString(), options);
    } finally {
      Files.deleteIfExists(file);
    }
    outputs = new HashSet<>(Set.of(SIGNS));
    if (!isShaped(SIGNS, columns.signs(), SentenceSaid.STATES)) {
      throw new IllegalArgumentException("The model does not read " + columns.signs() + " signs.");
    }
    readToo(CHANGES, columns.changes());
    readToo(QUESTIONS, columns.questions());
    readToo(LENGTHS, columns.lengths());
  }

  private void readToo(String output, int columns) throws OrtException {
    if (columns > 0 && !isShaped(output, columns)) {
      throw new IllegalArgumentException(
          "The model does not have " + columns + " columns of " + output + ".");
    }
    if (columns > 0) {
      outputs.add(output);
    }
  }

  /** Whether an output has a row for each sentence, of this shape. */
  private boolean isShaped(String output, long... row) throws OrtException {
    NodeInfo said = session.getOutputInfo().get(output);
    return said != null
        && said.getInfo() instanceof TensorInfo info
        && info.getShape().length == row.length + 1
        && Arrays.equals(Arrays.copyOfRange(info.getShape(), 1, row.length + 1), row);
  }

  /**
   * What the sentences and numbers of a passage say.
   *
   * @throws easewright.deadline.DeadlinePassed when the thread's time is over before its turn
   */
  Read said(Passage passage) throws OrtException {
    int pieces = passage.ids().size();
    LongBuffer ids = LongBuffer.allocate(pieces);
    passage.ids().forEach(ids::put);
    int sentences = passage.sentences().size();
    int numbers = outputs.contains(LENGTHS) ? passage.numbers().size() : 0;
    takeTurn();
    try (OnnxTensor idsIn =
            OnnxTensor.createTensor(environment, ids.flip(), new long[] {1, pieces});
        OnnxTensor segmentsIn = marked(passage.sentences(), pieces);
        OnnxTensor spansIn = outputs.contains(LENGTHS) ? spans(passage, pieces) : null) {
      Map<String, OnnxTensor> in = new HashMap<>(Map.of("ids", idsIn, "segments", segmentsIn));
      if (spansIn != null) {
        in.put("spans", spansIn);
      }
      try (OrtSession.Result result = session.run(in, outputs)) {
        return new Read(
            rows(result.get(SIGNS), sentences),
            rows(result.get(CHANGES), sentences),
            rows(result.get(QUESTIONS), sentences),
            numbers == 0 ? List.of() : rows(result.get(LENGTHS), numbers));
      }
    } finally {
      free.release();
    }
  }

  /** The numbers; a passage without any gives its first sentence, since the model needs a row. */
  private OnnxTensor spans(Passage passage, int pieces) throws OrtException {
    List<Passage.Asked> numbers = passage.numbers();
    return marked(numbers.isEmpty() ? passage.sentences().subList(0, 1) : numbers, pieces);
  }

  /** A row for each place, 1 where a piece belongs to it. */
  private OnnxTensor marked(List<Passage.Asked> places, int pieces) throws OrtException {
    FloatBuffer marks = FloatBuffer.allocate(places.size() * pieces);
    for (int i = 0; i < places.size(); i++) {
      for (int at = places.get(i).from(); at < places.get(i).to(); at++) {
        marks.put(i * pieces + at, 1);
      }
    }
    return OnnxTensor.createTensor(environment, marks, new long[] {places.size(), pieces});
  }

  /** Waiting for others costs a reader its own time, and no more than that. */
  private void takeTurn() {
    try {
      while (!free.tryAcquire(PATIENCE_MS, TimeUnit.MILLISECONDS)) {
        Deadline.check();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Interrupted while waiting to read.", e);
    }
  }

  private static List<float[]> rows(Optional<OnnxValue> output, int rows) {
    if (output.isEmpty()) {
      return List.of();
    }
    FloatBuffer said = ((OnnxTensor) output.get()).getFloatBuffer();
    int each = said.remaining() / rows;
    List<float[]> found = new ArrayList<>();
    for (int i = 0; i < rows; i++) {
      float[] one = new float[each];
      said.get(one);
      found.add(one);
    }
    return found;
  }
}
