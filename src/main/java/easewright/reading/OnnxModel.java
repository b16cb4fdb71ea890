package easewright.reading;

import ai.onnxruntime.NodeInfo;
import ai.onnxruntime.OnnxTensor;
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
import java.util.List;
import java.util.Map;
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

  private final OrtEnvironment environment;
  private final OrtSession session;
  private final Semaphore free =
      new Semaphore(Math.min(MOST_AT_ONCE, Runtime.getRuntime().availableProcessors()), true);

  /**
   * Loads a model. It goes through a temporary file, since a heap that held it once would stay as
   * large.
   *
   * @throws OrtException when it is no model
   * @throws IOException when it cannot be read or there is no room for it
   * @throws IllegalArgumentException when it reads another number of signs
   */
  OnnxModel(InputStream model, int signs) throws OrtException, IOException {
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
    NodeInfo said = session.getOutputInfo().get("said");
    long[] shape = said != null && said.getInfo() instanceof TensorInfo t ? t.getShape() : null;
    if (shape == null
        || shape.length != 3
        || shape[1] != signs
        || shape[2] != SentenceSaid.STATES) {
      throw new IllegalArgumentException("The model does not read " + signs + " signs.");
    }
  }

  /**
   * What the sentences of a passage say.
   *
   * @throws easewright.deadline.DeadlinePassed when the thread's time is over before its turn
   * @return for each sentence the probabilities of every sign: reported, denied, doubtful
   */
  List<float[]> said(Passage passage) throws OrtException {
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
            session.run(Map.of("ids", idsIn, "segments", segmentsIn), Set.of("said"))) {
      return bySentence(((OnnxTensor) result.get(0)).getFloatBuffer(), sentences.size());
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

  private static List<float[]> bySentence(FloatBuffer said, int sentences) {
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
