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

  private final OrtEnvironment environment;
  private final OrtSession session;
  private final Set<String> outputs;
  private final Semaphore free =
      new Semaphore(Math.min(MOST_AT_ONCE, Runtime.getRuntime().availableProcessors()), true);

  /**
   * What the model says of each sentence of a passage.
   *
   * @param signs the probabilities of every sign: reported, denied, doubtful
   * @param changes those of every column about changes; empty where it does not read them
   */
  record Read(List<float[]> signs, List<float[]> changes) {}

  /**
   * Loads a model. It goes through a temporary file, since a heap that held it once would stay as
   * large.
   *
   * @throws OrtException when it is no model
   * @throws IOException when it cannot be read or there is no room for it
   * @param changes number of its columns about changes; 0 where they are not to be read
   * @throws IllegalArgumentException when it reads another number of signs or changes
   */
  OnnxModel(InputStream model, int signs, int changes) throws OrtException, IOException {
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
    outputs = changes == 0 ? Set.of(SIGNS) : Set.of(SIGNS, CHANGES);
    if (!isShaped(SIGNS, signs, SentenceSaid.STATES)) {
      throw new IllegalArgumentException("The model does not read " + signs + " signs.");
    }
    if (changes > 0 && !isShaped(CHANGES, changes)) {
      throw new IllegalArgumentException("The model has not " + changes + " columns of changes.");
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
   * What the sentences of a passage say.
   *
   * @throws easewright.deadline.DeadlinePassed when the thread's time is over before its turn
   */
  Read said(Passage passage) throws OrtException {
    int pieces = passage.ids().size();
    List<Passage.Asked> sentences = passage.sentences();
    LongBuffer ids = LongBuffer.allocate(pieces);
    passage.ids().forEach(ids::put);
    FloatBuffer segments = FloatBuffer.allocate(sentences.size() * pieces);
    for (int i = 0; i < sentences.size(); i++) {
      for (int at = sentences.get(i).from(); at < sentences.get(i).to(); at++) {
        segments.put(i * pieces + at, 1);
      }
    }
    takeTurn();
    try (OnnxTensor idsIn =
            OnnxTensor.createTensor(environment, ids.flip(), new long[] {1, pieces});
        OnnxTensor segmentsIn =
            OnnxTensor.createTensor(environment, segments, new long[] {sentences.size(), pieces});
        OrtSession.Result result =
            session.run(Map.of("ids", idsIn, "segments", segmentsIn), outputs)) {
      return new Read(
          bySentence(result.get(SIGNS), sentences.size()),
          bySentence(result.get(CHANGES), sentences.size()));
    } finally {
      free.release();
    }
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

  private static List<float[]> bySentence(Optional<OnnxValue> output, int sentences) {
    if (output.isEmpty()) {
      return List.of();
    }
    FloatBuffer said = ((OnnxTensor) output.get()).getFloatBuffer();
    int each = said.remaining() / sentences;
    List<float[]> found = new ArrayList<>();
    for (int i = 0; i < sentences; i++) {
      float[] one = new float[each];
      said.get(one);
      found.add(one);
    }
    return found;
  }
}
