package easewright.reading;

import ai.onnxruntime.NodeInfo;
import ai.onnxruntime.OnnxTensor;
import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtException;
import ai.onnxruntime.OrtLoggingLevel;
import ai.onnxruntime.OrtSession;
import ai.onnxruntime.TensorInfo;
import java.nio.FloatBuffer;
import java.nio.LongBuffer;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A model in the memory of ONNX Runtime, for as long as the process lives; {@code
 * src/training/reader/export.py} says what goes in and comes out. Threads may use it at once, each
 * reading in its own.
 */
final class OnnxModel {
  private static final int STATES = 3;

  private final OrtEnvironment environment;
  private final OrtSession session;

  /**
   * Loads a model.
   *
   * @throws OrtException when it is no model
   * @throws IllegalArgumentException when it reads another number of signs
   */
  OnnxModel(byte[] model, int signs) throws OrtException {
    environment =
        OrtEnvironment.getEnvironment(OrtLoggingLevel.ORT_LOGGING_LEVEL_ERROR, "easewright");
    environment.setTelemetry(false);
    try (OrtSession.SessionOptions options = new OrtSession.SessionOptions()) {
      options.setIntraOpNumThreads(1);
      options.setInterOpNumThreads(1);
      // What it needs varies with each text: kept patterns and arenas would only grow.
      options.setMemoryPatternOptimization(false);
      options.setCPUArenaAllocator(false);
      session = environment.createSession(model, options);
    }
    NodeInfo said = session.getOutputInfo().get("said");
    long[] shape = said != null && said.getInfo() instanceof TensorInfo t ? t.getShape() : null;
    if (shape == null || shape.length != STATES || shape[1] != signs || shape[2] != STATES) {
      throw new IllegalArgumentException("The model does not read " + signs + " signs.");
    }
  }

  /**
   * What the sentences of a passage say.
   *
   * @return by sentence and sign the probabilities of reported, denied and doubtful
   */
  float[][][] said(Passage passage) throws OrtException {
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
    try (OnnxTensor idsIn =
            OnnxTensor.createTensor(environment, ids.flip(), new long[] {1, pieces});
        OnnxTensor segmentsIn =
            OnnxTensor.createTensor(environment, segments, new long[] {sentences.size(), pieces});
        OrtSession.Result result =
            session.run(Map.of("ids", idsIn, "segments", segmentsIn), Set.of("said"))) {
      return (float[][][]) result.get(0).getValue();
    }
  }
}
