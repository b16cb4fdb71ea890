package easewright.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Diagnosis;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.rulebook.RuleBook;
import java.util.Collection;
import java.util.List;

/** Puts fittings before the whole service, from their wire form to the answer. */
final class Consulting {
  static final RuleBook BOOK = RuleBook.compiledIn();
  private static final PatternSheets SHEETS = new PatternSheets();
  private static final Diagnosis DIAGNOSIS = new Diagnosis(BOOK, SHEETS.shipped());
  private static final FittingReader READER =
      new FittingReader(KnownNames.of(BOOK.source(), SHEETS));

  private Consulting() {}

  static Answer answer(JsonNode fitting) {
    try {
      return DIAGNOSIS.answer(READER.read(fitting));
    } catch (FaultyRequest e) {
      throw new AssertionError(e.faults() + " in " + fitting, e);
    }
  }

  static Answer answerToSigns(Collection<String> clearlySeen) {
    ObjectNode fitting = JsonNodeFactory.instance.objectNode();
    clearlySeen.forEach(sign -> report(fitting, sign, true, "clear"));
    return answer(fitting);
  }

  static void report(ObjectNode fitting, String sign, boolean present, String degree) {
    ObjectNode report = fitting.withArray("signs").addObject();
    report.put("sign", sign).put("seen", present ? "present" : "absent");
    if (present && degree != null) {
      report.put("degree", degree);
    }
  }

  /** Ids of the causes mentioned, the likeliest first. */
  static List<String> causes(Answer answer) {
    return answer.causes().stream().map(CauseNote::id).toList();
  }

  static String leading(Answer answer) {
    return answer.causes().stream().limit(4).map(c -> c.id() + " " + c.probability()).toList()
        + ", nothing "
        + answer.nothingWrong();
  }
}
