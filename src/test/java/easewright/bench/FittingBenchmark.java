package easewright.bench;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Diagnosis;
import easewright.fitting.Fitting;
import easewright.pattern.PatternSheets;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.rulebook.RuleBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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

/**
 * What a warm fitting costs, next to reading and writing the same JSON. Compare the rows of one run
 * with each other; the numbers alone depend on the machine.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class FittingBenchmark {
  private final ObjectMapper json =
      new ObjectMapper().setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);
  private byte[] request;
  private FittingReader reader;
  private Diagnosis diagnosis;
  private Fitting fitting;
  private Fitting withWhyNot;
  private Answer answer;

  @Setup
  public void read() throws IOException {
    Typical.silence();
    RuleBook book = RuleBook.compiledIn();
    PatternSheets sheets = new PatternSheets();
    request = Files.readAllBytes(Path.of("openapi/examples/first-fitting.json"));
    reader = new FittingReader(KnownNames.of(book.source(), sheets));
    diagnosis = new Diagnosis(book, sheets.shipped());
    ObjectNode plain = (ObjectNode) json.readTree(request);
    withWhyNot = reader.read(plain);
    fitting = reader.read(plain.without("whyNot"));
    answer = diagnosis.answer(fitting);
  }

  @Benchmark
  public JsonNode parseTheRequest() throws IOException {
    return json.readTree(request);
  }

  @Benchmark
  public byte[] writeTheAnswer() throws IOException {
    return json.writeValueAsBytes(answer);
  }

  @Benchmark
  public Fitting parseAndCheckTheRequest() throws IOException {
    return reader.read(json.readTree(request));
  }

  @Benchmark
  public Answer diagnose() {
    return diagnosis.answer(fitting);
  }

  @Benchmark
  public Answer diagnoseAndSayWhyNot() {
    return diagnosis.answer(withWhyNot);
  }

  /** Runs the benchmark: {@code mvn -q test-compile exec:exec@benchmark}. */
  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(FittingBenchmark.class.getSimpleName()).build()).run();
  }
}
