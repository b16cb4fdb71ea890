package easewright.bench;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Stages;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBook.Consultation;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * How the engine's time grows: with families of rules a request does not concern, and with the
 * signs of the request. Prints both as ratios and draws them to {@code target/growth.svg}.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 6, time = 2)
public class GrowthBenchmark {

  /** The typical fitting before a book of so many families. */
  @State(Scope.Benchmark)
  public static class Families {
    @Param({"1", "4", "16"})
    int families;

    private RuleBook book;
    private List<Object> facts;

    @Setup
    public void compile() throws IOException {
      Typical.silence();
      Path folder = Files.createTempDirectory(Path.of("target"), "families");
      book = RuleBook.compile(FamilyBook.write(Path.of("rules"), folder, families));
      facts = new Stages(Stages.read(Typical.json())).facts();
    }
  }

  /** A fitting with so many signs before our book. */
  @State(Scope.Benchmark)
  public static class Signs {
    @Param({"1", "15", "30", "45", "60"})
    int signs;

    private List<Object> facts;
    private Stages stages;

    @Setup
    public void report() {
      Typical.silence();
      ObjectNode fitting = Typical.json();
      ArrayNode reported = fitting.putArray("signs");
      for (SignEntry sign : Stages.book().catalog().signs().values()) {
        if (reported.size() < signs && !sign.redFlag()) {
          reported
              .addObject()
              .put("sign", sign.id())
              .put("seen", reported.size() % 3 == 2 ? "absent" : "present");
        }
      }
      stages = new Stages(Stages.read(fitting));
      facts = stages.facts();
    }
  }

  @Benchmark
  public Object rulesByFamilies(Families of) {
    return consult(of.book, of.facts);
  }

  @Benchmark
  public Object rulesBySigns(Signs of) {
    return consult(Stages.book(), of.facts);
  }

  @Benchmark
  public Object answerBySigns(Signs of) {
    return of.stages.whole();
  }

  private static String title(String benchmark) {
    return switch (benchmark) {
      case "rulesByFamilies" -> "rules, by families in the book";
      case "rulesBySigns" -> "rules, by signs reported";
      default -> "whole answer, by signs reported";
    };
  }

  private static Object consult(RuleBook book, List<Object> facts) {
    try (Consultation consultation = book.open()) {
      return consultation.hear(facts);
    }
  }

  public static void main(String[] args) throws RunnerException, IOException {
    Collection<RunResult> results =
        new Runner(
                new OptionsBuilder()
                    .include(GrowthBenchmark.class.getSimpleName())
                    .forks(1)
                    .jvmArgs("-Xmx3g")
                    .build())
            .run();
    Map<String, TreeMap<Integer, Double>> curves = new TreeMap<>();
    for (RunResult result : results) {
      String families = result.getParams().getParam("families");
      String at = families == null ? result.getParams().getParam("signs") : families;
      curves
          .computeIfAbsent(title(result.getPrimaryResult().getLabel()), t -> new TreeMap<>())
          // The iteration that was disturbed least: others on the machine only ever add.
          .put(Integer.valueOf(at), result.getPrimaryResult().getStatistics().getMin());
    }
    curves.forEach(
        (name, points) -> {
          double first = points.firstEntry().getValue();
          points.forEach(
              (at, micros) ->
                  System.out.printf("%s %d: %.1f µs, %.2f×%n", name, at, micros, micros / first));
        });
    Files.writeString(Path.of("target/growth.svg"), GrowthPlot.of(curves));
  }
}
