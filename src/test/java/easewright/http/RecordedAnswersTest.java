package easewright.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Diagnosis;
import easewright.fitting.Fitting;
import easewright.http.Examples.Example;
import easewright.pattern.PatternSheets;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.request.SoFar;
import easewright.rulebook.RuleBook;
import easewright.saying.AnswerJson;
import easewright.saying.Detail;
import easewright.saying.JsonFormat;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Fittings of the contract are answered as recorded, without starting the service: fast enough to
 * run against every mutant of the diagnosis.
 */
class RecordedAnswersTest {
  private static final RuleBook BOOK = RuleBook.compiledIn();
  private static final PatternSheets SHEETS = new PatternSheets();
  private static final FittingReader READER =
      new FittingReader(KnownNames.of(BOOK.source(), SHEETS));
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Recreated for each test, so that mutants of its set-up are tested too. */
  private final Diagnosis diagnosis = new Diagnosis(BOOK, SHEETS.shipped());

  static {
    new JsonFormat().customize(JSON);
  }

  static List<Example> fittings() throws IOException {
    List<Example> fittings = new ArrayList<>();
    for (Example example : Examples.all()) {
      boolean answered = example.path().equals("/v1/fittings") && example.status() == 200;
      if (answered && !JSON.readTree(example.request()).has("text")) {
        fittings.add(example);
      }
    }
    return fittings;
  }

  @ParameterizedTest
  @MethodSource("fittings")
  void a_fitting_of_the_contract_gets_its_recorded_answer(Example example) throws IOException {
    ObjectNode request = (ObjectNode) JSON.readTree(example.request());
    Fitting fitting = READER.read(request);
    JsonNode now =
        new AnswerJson(JSON)
            .tree(
                diagnosis.answer(fitting).goingOnFrom(SoFar.of(request, fitting), null),
                Detail.LEAN);
    Examples.assertAlike(example.name(), now);
  }
}
