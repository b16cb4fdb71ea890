package easewright.reply;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.WhyNotNote;
import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import easewright.rulebook.Voice.Thing;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Answers whether it is the cloth, the elastic, or what else the writer suspects. */
record ThingAsked(Answer answer, RuleBookSource book, Voice voice, SpokenPhrases phrases) {

  /** How far an answer helps, the most first: "the cloth or the size?" needs one answer. */
  private static final List<String> BEST =
      List.of("-yes", "-sound", "-perhaps", "-no", "-doubt", "-untold");

  /** Which of the things asked about it is; empty where the voice knows none of them. */
  Optional<String> answer(JsonNode questions) {
    Optional<String> suspected = suspected();
    if (suspected.isPresent()) {
      return suspected;
    }
    Map<String, Thing> asked = new LinkedHashMap<>();
    for (JsonNode one : questions) {
      Thing thing = voice.talk().things().get(one.path("about").asText());
      if (one.path("kind").asText().equals("thing") && thing != null) {
        asked.putIfAbsent(ending(thing), thing);
      }
    }
    if (asked.size() > 1 && isBoth(questions)) {
      return Optional.of(phrases.say("thing-both"));
    }
    return BEST.stream()
        .filter(asked::containsKey)
        .findFirst()
        .map(ending -> phrases.say("thing" + ending, "thing", asked.get(ending).name()));
  }

  /** Whether both of two causes are of what she asks about: "the band or the straps?" */
  private boolean isBoth(JsonNode questions) {
    if (!new SpokenCause(answer, voice, phrases).isBoth()) {
      return false;
    }
    List<CauseEntry> causes =
        answer.causes().stream()
            .limit(2)
            .map(one -> book.catalog().causes().get(one.id()))
            .toList();
    return causes.stream()
        .allMatch(
            cause ->
                questions.findValuesAsText("about").stream()
                    .map(about -> voice.talk().things().get(about))
                    .filter(thing -> thing != null && thing.isMeantBy(cause))
                    .filter(thing -> !causes.stream().allMatch(thing::isMeantBy))
                    .findAny()
                    .isPresent());
  }

  private String ending(Thing thing) {
    if (answer.noFault() != null && !SpokenCause.isThin(answer, voice)) {
      return "-sound";
    }
    return key("", one -> thing.isMeantBy(book.catalog().causes().get(one.id())));
  }

  /** Whether it is the first cause that the writer named herself; empty where she named none. */
  Optional<String> suspected() {
    return suspected("suspected");
  }

  private Optional<String> suspected(String kind) {
    if (answer.whyNot().isEmpty()) {
      return Optional.empty();
    }
    WhyNotNote note = answer.whyNot().get(0);
    String key = key(kind, one -> one.id().equals(note.cause()));
    return Optional.of(
        phrases.say(
            key,
            "perhaps",
            new SpokenEdge(answer, voice).in(voice.causes().get(note.cause()).perhaps())));
  }

  /** The same where her question is just that: "friends say my band is too loose, is it?" */
  Optional<String> asked(JsonNode question) {
    Verdict verdict = Verdict.of(answer);
    if (verdict != Verdict.CLEAR && verdict != Verdict.OPEN || !isSuspicion(question)) {
      return Optional.empty();
    }
    if (!answer.whyNot().isEmpty()) {
      return suspected("suspected-asked");
    }
    // nothing is said of why it is not first, so it is, unless a caution keeps it unsaid
    return answer.nothingTighter()
        ? Optional.empty()
        : Optional.of(phrases.say("suspected-asked" + (answer.clear() ? "-yes" : "-perhaps")));
  }

  /** Whether the one cause that the writer named stands in this question. */
  private boolean isSuspicion(JsonNode question) {
    List<JsonNode> named = new ArrayList<>();
    for (JsonNode span : answer.read().path("spans")) {
      if (span.path("pointer").asText().startsWith("/whyNot/")) {
        named.add(span);
      }
    }
    return named.size() == 1
        && answer.whyNot().size() <= 1
        && named.get(0).path("from").asInt() < question.path("to").asInt()
        && question.path("from").asInt() < named.get(0).path("to").asInt();
  }

  /** Whether one cause is named alone, and as likely. */
  private boolean isNearlyClear() {
    return new SpokenCause(answer, voice, phrases).isAlone()
        && answer.causes().get(0).probability() >= voice.talk().likely();
  }

  private String key(String kind, Predicate<CauseNote> isMeant) {
    boolean any = answer.causes().stream().anyMatch(isMeant);
    boolean first = any && isMeant.test(answer.causes().get(0));
    if (answer.clear() || isNearlyClear()) {
      return kind + (first ? "-yes" : any ? "-perhaps" : "-no");
    }
    boolean others = Verdict.of(answer) == Verdict.OPEN;
    return kind + (any ? "-perhaps" : others ? "-doubt" : "-untold");
  }
}
