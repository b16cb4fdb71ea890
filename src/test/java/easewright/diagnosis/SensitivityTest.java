package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.book.WholeFitting;
import easewright.diagnosis.MovedNumbers.Heard;
import easewright.pattern.PatternSheets;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RulePage.RuleCase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Which of the book's numbers decide: each is moved alone, a prior to twice and to half, a word one
 * degree up and down, and the first cause of every whole fitting in view and of every page case
 * that names one is compared. Writes {@code target/sensitivity.md}.
 */
@Tag("long")
class SensitivityTest {
  /** No number of one cause, sentence or sign may decide more of the whole fittings than this. */
  private static final double MOST_DECIDED = 0.05;

  private static final int DRAWS = 20;

  private static final RuleBook BOOK = RuleBook.compiledIn();
  private static final FittingReader READER =
      new FittingReader(KnownNames.of(BOOK.source(), new PatternSheets()));

  private final MovedNumbers moved = new MovedNumbers(BOOK);
  private final List<WholeFitting> whole =
      Stream.of(
              "/fittings/running.yaml",
              "/fittings/everyday.yaml",
              "/fittings/soft-tops.yaml",
              "/fittings/sixth.yaml")
          .flatMap(file -> WholeFitting.of(file).stream())
          .toList();
  private final List<Heard> fittings =
      whole.stream().map(one -> moved.heard(READER.read(one.request()))).toList();
  private final List<Heard> cases =
      BOOK.source().pages().values().stream()
          .flatMap(page -> page.cases().stream())
          .filter(one -> one.then().has("first cause") && one.withEach().isEmpty())
          .map(RuleCase::given)
          .map(given -> moved.heard(READER.read(given)))
          .toList();
  private final List<String> firstOfFittings = fittings.stream().map(moved::first).toList();
  private final List<String> firstOfCases = cases.stream().map(moved::first).toList();

  private NumberMove move(String what, String how, List<String> ofFittings, List<String> ofCases) {
    int[] changed = changed(firstOfFittings, ofFittings).toArray();
    int lost = 0;
    int won = 0;
    for (int i : changed) {
      boolean was = isRight(whole.get(i), firstOfFittings.get(i));
      boolean is = isRight(whole.get(i), ofFittings.get(i));
      lost += was && !is ? 1 : 0;
      won += is && !was ? 1 : 0;
    }
    int casesChanged = (int) changed(firstOfCases, ofCases).count();
    return new NumberMove(what, how, changed.length, lost, won, casesChanged);
  }

  private static IntStream changed(List<String> before, List<String> after) {
    return IntStream.range(0, before.size()).filter(i -> !before.get(i).equals(after.get(i)));
  }

  private static boolean isRight(WholeFitting fitting, String first) {
    return first.equals(fitting.first())
        || first.equals(fitting.second())
        || fitting.or().contains(first);
  }

  private List<NumberMove> priors() {
    List<NumberMove> moves = new ArrayList<>();
    for (CauseEntry cause : BOOK.catalog().causes().values()) {
      String what = cause.name() + " (" + cause.prior() + ")";
      moves.add(prior(what, "twice", Map.of(cause.id(), 2.0)));
      moves.add(prior(what, "half", Map.of(cause.id(), 0.5)));
    }
    return moves;
  }

  private NumberMove prior(String what, String how, Map<String, Double> times) {
    return move(what, how, moved.withPriors(times, fittings), moved.withPriors(times, cases));
  }

  /** Each prior by chance twice, half or as it is. */
  private List<NumberMove> allPriors() {
    Random chance = new Random(17);
    return IntStream.range(0, DRAWS)
        .mapToObj(
            draw -> {
              Map<String, Double> times = new TreeMap<>();
              for (String cause : new TreeSet<>(BOOK.catalog().causes().keySet())) {
                times.put(cause, List.of(0.5, 1.0, 2.0).get(chance.nextInt(3)));
              }
              return prior("all priors by chance", "draw " + (draw + 1), times);
            })
        .toList();
  }

  /** A word of the scales moves everywhere at once. */
  private List<NumberMove> words() {
    List<NumberMove> moves = new ArrayList<>();
    for (String word : MovedNumbers.STRENGTHS) {
      degrees(MovedNumbers.STRENGTHS, word).forEach(to -> moves.add(word(word, to)));
    }
    for (String word : MovedNumbers.LEAKS) {
      degrees(MovedNumbers.LEAKS, word)
          .forEach(to -> moves.add(word("without-fault-" + word, "without-fault-" + to)));
    }
    return moves;
  }

  private NumberMove word(String from, String to) {
    double number = moved.number(to);
    return move(
        from,
        "as " + to,
        moved.withWord(from, number, fittings),
        moved.withWord(from, number, cases));
  }

  private List<NumberMove> sentences() {
    List<NumberMove> moves = new ArrayList<>();
    Set<Shows> all = moved.sentences(Stream.concat(fittings.stream(), cases.stream()).toList());
    for (Shows one : all) {
      for (String to : degrees(MovedNumbers.STRENGTHS, one.howOften())) {
        Function<Heard, String> first =
            heard -> heard.saw(one.sign()) ? moved.withSentence(one, to, heard) : null;
        String what = one.rule().name() + " → " + one.sign() + " (" + one.howOften() + ")";
        moves.add(ofSome(what, to, first));
      }
    }
    return moves;
  }

  private List<NumberMove> leaks() {
    List<NumberMove> moves = new ArrayList<>();
    Map<String, String> withoutFault = new LinkedHashMap<>();
    BOOK.catalog().signs().values().stream()
        .filter(sign -> !sign.redFlag())
        .forEach(sign -> withoutFault.put(sign.id(), sign.withoutFault().replace(' ', '-')));
    BOOK.catalog()
        .findings()
        .values()
        .forEach(one -> withoutFault.put(one.id(), one.withoutFault().replace(' ', '-')));
    withoutFault.forEach(
        (sign, word) -> {
          for (String to : degrees(MovedNumbers.LEAKS, word)) {
            double times =
                moved.number("without-fault-" + to) / moved.number("without-fault-" + word);
            Function<Heard, String> first =
                heard -> heard.saw(sign) ? moved.withLeak(sign, times, heard) : null;
            moves.add(ofSome(sign + " with nothing wrong (" + word + ")", to, first));
          }
        });
    return moves;
  }

  /** A move that says nothing, null, of fittings which it does not concern. */
  private NumberMove ofSome(String what, String to, Function<Heard, String> first) {
    return move(
        what, to, after(fittings, firstOfFittings, first), after(cases, firstOfCases, first));
  }

  private static List<String> after(
      List<Heard> all, List<String> before, Function<Heard, String> first) {
    return IntStream.range(0, all.size())
        .mapToObj(
            i -> {
              String now = first.apply(all.get(i));
              return now == null ? before.get(i) : now;
            })
        .toList();
  }

  private static List<String> degrees(List<String> scale, String word) {
    int at = scale.indexOf(word);
    return Stream.of(at + 1, at - 1)
        .filter(i -> at >= 0 && i >= 0 && i < scale.size())
        .map(scale::get)
        .toList();
  }

  @Test
  void no_single_number_decides_many_fittings() throws IOException {
    Map<String, List<NumberMove>> kinds = new LinkedHashMap<>();
    kinds.put("Priors", priors());
    kinds.put("Sentences, one degree", sentences());
    kinds.put("Signs with nothing wrong, one degree", leaks());
    List<NumberMove> single = kinds.values().stream().flatMap(List::stream).toList();
    kinds.put("Words of the scales, everywhere at once", words());
    kinds.put("Every prior at once", allPriors());
    Files.writeString(Path.of("target/sensitivity.md"), report(kinds));
    assertTrue(cases.size() > 100 && fittings.size() >= 120);
    assertEquals(
        List.of(),
        single.stream()
            .filter(one -> one.fittings() > MOST_DECIDED * fittings.size())
            .map(NumberMove::what)
            .toList());
  }

  private String report(Map<String, List<NumberMove>> kinds) {
    StringBuilder text = new StringBuilder("# Which numbers decide\n\n");
    text.append(
        "%d whole fittings in view and %d page cases, each number moved alone.%n"
            .formatted(fittings.size(), cases.size()));
    kinds.forEach((kind, moves) -> text.append(NumberMove.table(kind, moves)));
    return text.toString();
  }
}
