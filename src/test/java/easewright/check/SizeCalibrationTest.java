package easewright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Diagnosis;
import easewright.measure.Length;
import easewright.measure.MeasuringMethod;
import easewright.pattern.PatternSheets;
import easewright.pattern.PatternSize;
import easewright.request.CheckReader;
import easewright.request.KnownNames;
import easewright.rulebook.RuleBook;
import easewright.size.Designation;
import easewright.size.SizeSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Whether the odds of a size check are borne out: bodies are measured with an error drawn at
 * random, and the answer is compared with the size of the true girths.
 *
 * <p>Bodies are drawn from the published statistics of the 1988 survey of 2208 women of the US Army
 * (Gordon et al. 1989, NATICK/TR-89/044): underbust 769.7 ± 51.0 mm, bust 68.2 + 1.090 × underbust
 * ± 30.8 mm (computed from the survey). With {@code -Deasewright.survey=FILE} they are the surveyed
 * women themselves, one a line, bust and underbust first; {@code target/sizes.md} lists the counts.
 */
@Tag("long")
class SizeCalibrationTest {
  private static final RuleBook BOOK = RuleBook.compiledIn();
  private static final PatternSheets SHEETS = new PatternSheets();
  private static final SizeCheck CHECK = new SizeCheck(BOOK, new Diagnosis(BOOK, SHEETS.shipped()));
  private static final KnownNames KNOWN = KnownNames.of(BOOK.source(), SHEETS);
  private static final CheckReader READER = new CheckReader(KNOWN);

  private static final double SELF = MeasuringMethod.TAPE_SELF.girthSdMm();
  private static final double HELPED = MeasuringMethod.TAPE_HELPED.girthSdMm();
  private static final double TRAINED = MeasuringMethod.TAPE_TRAINED.girthSdMm();

  private static List<double[]> bodies;
  private static boolean surveyed;

  /** Girths in mm to the size that is right for them; empty if the chart has none. */
  private interface Truth extends Function<double[], Optional<String>> {}

  /**
   * Answers to one way of asking.
   *
   * @param told the method that was told
   * @param sdMm the error that the tape really had
   */
  private record Pass(String name, String chart, MeasuringMethod told, double sdMm) {}

  /** What came of one pass; all but the counts of women are shares. */
  private record Count(
      int women,
      double[] top,
      double topOnChart,
      double stated,
      double brier,
      double ece,
      double offChart,
      double offStated,
      int offToldToCut,
      int onToldNone,
      int toldAgainstOdds,
      int clear,
      int clearRight) {}

  @BeforeAll
  static void bodies() throws IOException {
    String file = System.getProperty("easewright.survey");
    surveyed = file != null;
    bodies = surveyed ? surveyed(Path.of(file)) : drawn(400);
  }

  private static List<double[]> surveyed(Path file) throws IOException {
    try (Stream<String> lines = Files.lines(file)) {
      return lines
          .skip(1)
          .map(line -> line.split(","))
          .map(row -> new double[] {Double.parseDouble(row[0]), Double.parseDouble(row[1])})
          .toList();
    }
  }

  private static List<double[]> drawn(int women) {
    Random random = new Random(1988);
    List<double[]> drawn = new ArrayList<>();
    while (drawn.size() < women) {
      double under = 769.7 + 51.0 * random.nextGaussian();
      drawn.add(new double[] {68.2 + 1.090 * under + 30.8 * random.nextGaussian(), under});
    }
    return drawn;
  }

  private static final List<Pass> PASSES =
      List.of(
          new Pass("EN self", "en", MeasuringMethod.TAPE_SELF, SELF),
          new Pass("EN helped", "en", MeasuringMethod.TAPE_HELPED, HELPED),
          new Pass("EN trained", "en", MeasuringMethod.TAPE_TRAINED, TRAINED),
          new Pass("UK inches, self, to 1/8 in", "uk", MeasuringMethod.TAPE_SELF, SELF),
          new Pass("US inches, trained", "us", MeasuringMethod.TAPE_TRAINED, TRAINED),
          new Pass("quillmere self", "quillmere-top", MeasuringMethod.TAPE_SELF, SELF),
          new Pass("quillmere trained", "quillmere-top", MeasuringMethod.TAPE_TRAINED, TRAINED),
          new Pass("ossenby self", "ossenby-pull-on", MeasuringMethod.TAPE_SELF, SELF),
          new Pass("ossenby trained", "ossenby-pull-on", MeasuringMethod.TAPE_TRAINED, TRAINED),
          new Pass("larkhythe self", "larkhythe-soft-top", MeasuringMethod.TAPE_SELF, SELF),
          new Pass("EN self, real error 15 mm", "en", MeasuringMethod.TAPE_SELF, 15),
          new Pass("EN helped, real error 10.2 mm", "en", MeasuringMethod.TAPE_HELPED, SELF),
          new Pass("EN helped, real error 5.1 mm", "en", MeasuringMethod.TAPE_HELPED, TRAINED),
          new Pass("EN trained, real error 7.7 mm", "en", MeasuringMethod.TAPE_TRAINED, HELPED),
          new Pass("EN trained, real error 10.2 mm", "en", MeasuringMethod.TAPE_TRAINED, SELF));

  // Definition of a probability: what is stated is right as often as that. With the errors that
  // the service assumes, the mean stated lies within three standard errors of what is right.
  @Test
  void what_is_stated_is_right_as_often_where_the_tape_errs_as_told() throws IOException {
    List<String> rows = new ArrayList<>();
    Map<String, Count> counts = new HashMap<>();
    for (Pass pass : PASSES) {
      Count count = count(pass);
      counts.put(pass.name(), count);
      rows.add(row(pass, count));
      String seen = pass + " " + count;
      // Nobody whose girths more probably lie off the chart is told to cut (finding 1 of the
      // outside review: 481 of 2208 women were).
      assertEquals(0, count.toldAgainstOdds(), seen);
      if (Math.abs(pass.sdMm() - pass.told().girthSdMm()) < 0.01) {
        // A flat prior is a little too modest where the chart ends; 4 points for it.
        double noise = 3 * Math.sqrt(0.25 / count.women()) + 0.04;
        assertEquals(count.top()[0], count.stated(), noise, seen);
        assertEquals(count.offChart(), count.offStated(), 0.06, seen);
        assertTrue(count.ece() < 0.06 + 1.5 / Math.sqrt(count.women()), seen);
        assertTrue(count.brier() < 0.26, seen);
        // "Clear" means right more often than not.
        assertTrue(count.clear() < 20 || count.clearRight() > 0.5 * count.clear(), seen);
      }
    }
    // The middle method is the safer claim where a helper's real error is not known: what it states
    // is off by less than what the practised one states, whichever of the others is true.
    Count helpedLikeSelf = counts.get("EN helped, real error 10.2 mm");
    Count trainedLikeSelf = counts.get("EN trained, real error 10.2 mm");
    assertTrue(
        helpedLikeSelf.stated() - helpedLikeSelf.top()[0]
            < trainedLikeSelf.stated() - trainedLikeSelf.top()[0] - 0.05,
        helpedLikeSelf + " " + trainedLikeSelf);
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target/sizes.md"), table(rows));
  }

  private static String table(List<String> rows) {
    return (surveyed ? "The surveyed women" : "Drawn bodies")
        + "\n\n| pass | top-1 | top-2 | top-3 | top-1 on chart | stated | Brier | ECE | off chart"
        + " true / stated | off chart told to cut | on chart told none | clear, right |\n"
        + "|---|---|---|---|---|---|---|---|---|---|---|---|\n"
        + String.join("\n", rows)
        + "\n";
  }

  private static String row(Pass pass, Count c) {
    return String.format(
        Locale.ROOT,
        "| %s | %.1f | %.1f | %.1f | %.1f | %.1f | %.3f | %.3f | %.1f / %.1f | %d | %d | %d, %d |",
        pass.name(),
        c.top()[0] * 100,
        c.top()[1] * 100,
        c.top()[2] * 100,
        c.topOnChart() * 100,
        c.stated() * 100,
        c.brier(),
        c.ece(),
        c.offChart() * 100,
        c.offStated() * 100,
        c.offToldToCut(),
        c.onToldNone(),
        c.clear(),
        c.clearRight());
  }

  private static Count count(Pass pass) {
    Random random = new Random(7);
    Truth truth = truth(pass.chart());
    int[] top = new int[3];
    int on = 0;
    double stated = 0;
    double brier = 0;
    double offStated = 0;
    int offToldToCut = 0;
    int onToldNone = 0;
    int toldAgainstOdds = 0;
    int clear = 0;
    int clearRight = 0;
    double[][] bins = new double[10][3];
    for (double[] body : bodies) {
      Optional<String> right = truth.apply(body);
      SizeAnswer answer = CHECK.answer(READER.size(asked(pass, body, random)));
      SizeAnswer.SizeNote size = answer.size();
      on += right.isPresent() ? 1 : 0;
      List<String> named = new ArrayList<>();
      double p = 0;
      if (size.recommended() != null) {
        p = size.recommended().probability();
        named.add(size.recommended().size());
        size.neighbours().forEach(one -> named.add(one.size()));
      }
      int at = right.map(named::indexOf).orElse(-1);
      for (int i = Math.max(0, at); at >= 0 && i < 3; i++) {
        top[i]++;
      }
      boolean hit = at == 0;
      stated += p;
      brier += Math.pow(p - (hit ? 1 : 0), 2);
      double[] bin = bins[(int) Math.min(9, p * 10)];
      bin[0]++;
      bin[1] += p;
      bin[2] += hit ? 1 : 0;
      offStated += size.outside();
      boolean told = answer.take() != null;
      offToldToCut += told && right.isEmpty() ? 1 : 0;
      onToldNone += !told && answer.mixed() == null && right.isPresent() ? 1 : 0;
      toldAgainstOdds += told && size.outside() >= 0.5 ? 1 : 0;
      if (told && answer.take().choice().equals("clear")) {
        clear++;
        clearRight += hit ? 1 : 0;
      }
    }
    int n = bodies.size();
    double ece = 0;
    for (double[] bin : bins) {
      ece += Math.abs(bin[1] - bin[2]) / n;
    }
    return new Count(
        n,
        new double[] {top[0] / (double) n, top[1] / (double) n, top[2] / (double) n},
        top[0] / (double) Math.max(1, on),
        stated / n,
        brier / n,
        ece,
        1 - on / (double) n,
        offStated / n,
        offToldToCut,
        onToldNone,
        toldAgainstOdds,
        clear,
        clearRight);
  }

  private static ObjectNode asked(Pass pass, double[] body, Random random) {
    ObjectNode asked = JsonNodeFactory.instance.objectNode();
    boolean inches = pass.name().contains("1/8 in");
    ObjectNode girths = asked.putObject("body");
    girths.put("bust", read(body[0] + pass.sdMm() * random.nextGaussian(), inches));
    girths.put("underbust", read(body[1] + pass.sdMm() * random.nextGaussian(), inches));
    asked.put("measuredBy", pass.told().wireName());
    if (SHEETS.find(pass.chart()).isPresent()) {
      asked.putObject("pattern").put("sheet", pass.chart());
    } else {
      asked.put("system", pass.chart());
    }
    return asked;
  }

  private static String read(double mm, boolean inches) {
    return inches
        ? Math.round(mm / 25.4 * 8) / 8.0 + " in"
        : String.format(Locale.ROOT, "%.0f mm", mm);
  }

  /** The size by the plain rule of the standard, or by the ranges that the sheet prints. */
  private static Truth truth(String chart) {
    return SHEETS
        .find(chart)
        .<Truth>map(
            sheet ->
                body ->
                    sheet.sizes().stream()
                        .filter(size -> size.fits(body[1], body[0]))
                        .map(PatternSize::name)
                        .findFirst())
        .orElseGet(
            () ->
                body ->
                    SizeSystem.valueOf(chart.toUpperCase(Locale.ROOT))
                        .of(Length.ofMm(body[1]), Length.ofMm(body[0]))
                        .map(Designation::label));
  }
}
