package easewright.bench;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Stages;
import easewright.fitting.Fitting;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Where the time of one typical fitting goes, from its bytes to the bytes of its answer. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 4)
@Measurement(iterations = 6, time = 2)
@Fork(1)
public class StagesBenchmark {
  private final ObjectMapper json =
      new ObjectMapper().setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);
  private byte[] request;
  private Stages stages;
  private Answer answer;

  @Setup
  public void prepare() {
    Typical.silence();
    request = Typical.bytes();
    stages = new Stages(Stages.read(Typical.json()));
    answer = stages.whole();
  }

  @Benchmark
  public Fitting read() throws IOException {
    return Stages.read(json.readTree(request));
  }

  @Benchmark
  public Object figures() {
    return stages.figures();
  }

  @Benchmark
  public Object rules() {
    return stages.rules();
  }

  @Benchmark
  public Object inference() {
    return stages.inference();
  }

  @Benchmark
  public Object explanation() {
    return stages.explanation();
  }

  @Benchmark
  public Object advice() {
    return stages.advice();
  }

  @Benchmark
  public Object questions() {
    return stages.questions();
  }

  @Benchmark
  public Answer whole() {
    return stages.whole();
  }

  @Benchmark
  public byte[] write() throws IOException {
    return json.writeValueAsBytes(answer);
  }

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(StagesBenchmark.class.getSimpleName()).build()).run();
  }
}
