package easewright.bench;

import easewright.inference.Link;
import easewright.inference.Network;
import easewright.inference.Observation;
import easewright.inference.Posterior;
import easewright.inference.Question;
import easewright.inference.Question.Ask;
import easewright.inference.Questions;
import easewright.inference.WeightsOfEvidence;
import easewright.inference.WhyNot;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** 70 causes, 120 signs, 12 of them observed; links per sign as given. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class InferenceBenchmark {
  private static final int CAUSES = 70;
  private static final int SIGNS = 120;
  private static final int OBSERVED = 12;
  private static final double[] STRENGTHS = {0.95, 0.8, 0.6, 0.3, 0.1};

  @Param({"9", "35"})
  int linksPerSign;

  private Network network;
  private List<Link> overrides;
  private List<Observation> observations;
  private List<Ask> asks;
  private Posterior posterior;
  private String runnerUp;

  @Setup
  public void build() {
    var random = new Random(20);
    var builder = Network.builder();
    for (int c = 0; c < CAUSES; c++) {
      builder.cause("cause-" + c, 0.005 + 0.04 * random.nextDouble());
    }
    overrides = new ArrayList<>();
    observations = new ArrayList<>();
    asks = new ArrayList<>();
    for (int s = 0; s < SIGNS; s++) {
      String sign = "sign-" + s;
      builder.sign(sign, 0.01 + 0.05 * random.nextDouble());
      for (int c : random.ints(0, CAUSES).distinct().limit(linksPerSign).toArray()) {
        double strength = STRENGTHS[random.nextInt(STRENGTHS.length)];
        builder.link("cause-" + c, sign, strength);
        if (random.nextInt(20) == 0) {
          overrides.add(new Link("cause-" + c, sign, strength / 2));
        }
      }
      if (s < OBSERVED) {
        observations.add(new Observation(sign, s < 4, s % 2 == 0 ? 0.98 : 0.85));
      } else if (asks.size() < 100) {
        asks.add(new Ask(sign, 1 + s % 3, 0.95));
      }
    }
    network = builder.build();
    posterior = Posterior.infer(network, observations);
    runnerUp = posterior.causes(2).get(1).cause();
  }

  @Benchmark
  public Network withContext() {
    return network.with(overrides);
  }

  @Benchmark
  public Posterior infer() {
    return Posterior.infer(network, observations);
  }

  @Benchmark
  public Object inferWithLeaveOneOut() {
    return WeightsOfEvidence.of(Posterior.infer(network, observations));
  }

  @Benchmark
  public List<Question> questions() {
    return Questions.rank(posterior, asks, 3);
  }

  @Benchmark
  public WhyNot whyNot() {
    return WhyNot.explain(
        posterior,
        runnerUp,
        asks.stream().map(Ask::sign).toList(),
        (sign, present) -> new Observation(sign, present, 0.95),
        3);
  }

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(InferenceBenchmark.class.getSimpleName()).build())
        .run();
  }
}
