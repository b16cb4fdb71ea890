package easewright.diagnosis;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.pattern.PatternSheets;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.request.SoFar;
import easewright.rulebook.Conclusions;
import easewright.rulebook.RuleBook;
import easewright.rulebook.facts.Figure;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The service without its framework, and fittings with one part changed. */
final class Answering {
  static final RuleBook BOOK = RuleBook.compiledIn();
  static final PatternSheets SHEETS = new PatternSheets();
  static final Knowledge KNOWLEDGE = new Knowledge(BOOK.source(), BOOK.always());
  static final Diagnosis DIAGNOSIS = new Diagnosis(BOOK, SHEETS.shipped());
  static final FittingReader READER = new FittingReader(KnownNames.of(BOOK.source(), SHEETS));

  private static final Sizing SIZING = new Sizing(SHEETS.shipped(), BOOK.source());
  private static final Pattern READ = Pattern.compile("the wearer (?:reports|denies) \"([^\"]+)\"");

  private static final ObjectMapper YAML = new YAMLMapper();

  private Answering() {}

  /** A fitting written as YAML. */
  static ObjectNode given(String yaml) {
    try {
      return (ObjectNode) YAML.readTree(yaml);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
  }

  static Fitting read(JsonNode given) {
    return READER.read(given);
  }

  static Answer answer(JsonNode given) {
    return DIAGNOSIS.answer(read(given));
  }

  /** The answer with the request to go on from, as the service gives it. */
  static Answer goOn(JsonNode given) {
    Fitting fitting = read(given);
    return DIAGNOSIS.answer(fitting).goingOnFrom(SoFar.of(given, fitting), null);
  }

  /** Ids of the signs which some rule's condition reads, so that they change links too. */
  static Collection<String> signsReadByRules() {
    return BOOK.source().rules().stream()
        .flatMap(rule -> READ.matcher(rule.body()).results())
        .map(found -> found.group(1).replaceAll("[^a-zA-Z0-9]+", "-").toLowerCase())
        .collect(Collectors.toSet());
  }

  static Map<String, Figure> figures(Fitting fitting) {
    return numbers(fitting).figures();
  }

  static FittingNumbers numbers(Fitting fitting) {
    Draft draft = Draft.of(fitting, BOOK.source());
    return Figures.of(fitting, draft, SIZING.estimate(fitting).orElse(null), BOOK.source());
  }

  static List<Object> facts(Fitting fitting) {
    return Facts.of(
        fitting, Draft.of(fitting, BOOK.source()), figures(fitting).values(), tried(fitting));
  }

  static List<EarlierAdjustment> tried(Fitting fitting) {
    return TriedChanges.of(fitting, BOOK.source());
  }

  /** What the rules say of a fitting before any cause is weighed. */
  static Conclusions consult(Collection<?> facts) {
    try (RuleBook.Consultation consultation = BOOK.open()) {
      return consultation.hear(facts);
    }
  }

  static Fitting withSigns(Fitting f, List<ReportedSign> signs) {
    return with(f, f.choices(), signs, f.earlier(), f.whyNot());
  }

  static Fitting withChoices(Fitting f, Map<String, String> choices) {
    return with(f, choices, f.signs(), f.earlier(), f.whyNot());
  }

  static Fitting withEarlier(Fitting f, List<EarlierAdjustment> earlier) {
    return with(f, f.choices(), f.signs(), earlier, f.whyNot());
  }

  static Fitting withWhyNot(Fitting f, List<String> causes) {
    return with(f, f.choices(), f.signs(), f.earlier(), causes);
  }

  private static Fitting with(
      Fitting f,
      Map<String, String> choices,
      List<ReportedSign> signs,
      List<EarlierAdjustment> earlier,
      List<String> whyNot) {
    return new Fitting(
        f.units(),
        f.family(),
        f.body(),
        f.measuredHow(),
        f.sheet(),
        f.sizeCut(),
        f.sizeSystem(),
        choices,
        f.design(),
        f.garment(),
        f.cloths(),
        f.elastic(),
        f.making(),
        signs,
        f.fine(),
        f.trials(),
        earlier,
        f.earlierSizes(),
        f.circumstances(),
        whyNot,
        f.asksAbout(),
        f.asksWhatToDo(),
        f.couldNotTell());
  }
}
