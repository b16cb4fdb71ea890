package easewright.bench;

import easewright.diagnosis.Stages;
import easewright.fitting.Fitting;
import easewright.rulebook.RuleBook;
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
 * Our way beside plainer ones, in one run: everything fires each time, against what holds in any
 * fitting collected once; rules found by an index, without an engine; sums by maps and loops,
 * against gathered ones; and rules compiled at start, against classes from the build, up to the
 * first answer.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 4)
@Measurement(iterations = 6, time = 2)
@Fork(1)
public class PlainerWaysBenchmark {
  private Fitting fitting;
  private Stages stages;

  @Setup
  public void prepare() {
    Typical.silence();
    fitting = Stages.read(Typical.json());
    stages = new Stages(fitting);
  }

  @Benchmark
  public Object rulesAndLinks() {
    stages.rules();
    return stages.links();
  }

  @Benchmark
  public Object allRulesAndLinksEachTime() {
    return stages.allLinks(stages.allRules());
  }

  @Benchmark
  public Object rules() {
    return stages.rules();
  }

  @Benchmark
  public Object rulesByAnIndex() {
    return stages.rulesByHand();
  }

  @Benchmark
  public Object inference() {
    return stages.inference();
  }

  @Benchmark
  public Object inferenceByMapsAndLoops() {
    return stages.plainInference();
  }

  @Benchmark
  @BenchmarkMode(Mode.SingleShotTime)
  @OutputTimeUnit(TimeUnit.MILLISECONDS)
  @Warmup(iterations = 0)
  @Measurement(iterations = 1)
  @Fork(3)
  public Object firstAnswerWithClassesFromTheBuild() {
    return Stages.first(RuleBook.compiledIn(), fitting);
  }

  @Benchmark
  @BenchmarkMode(Mode.SingleShotTime)
  @OutputTimeUnit(TimeUnit.MILLISECONDS)
  @Warmup(iterations = 0)
  @Measurement(iterations = 1)
  @Fork(3)
  public Object firstAnswerWithRulesCompiledAtStart() {
    return Stages.first(RuleBook.compile(Path.of("rules")), fitting);
  }

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(PlainerWaysBenchmark.class.getSimpleName()).build())
        .run();
  }
}
