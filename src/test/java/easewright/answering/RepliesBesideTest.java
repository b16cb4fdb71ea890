package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.diagnosis.Answer;
import easewright.pattern.PatternSheets;
import easewright.reading.TrainedReader;
import easewright.reply.Addressee;
import easewright.reply.Speaker;
import easewright.request.FaultyRequest;
import easewright.rulebook.RuleBook;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Replies to posts of strangers, beside what a teacher wrote before: once with the post read as it
 * is, once as if it had been read without a mistake. Writes {@code target/replies-*.md}, to be
 * judged by readers; asserts only what needs none.
 */
@Tag("long")
class RepliesBesideTest {
  private static final Edition WORDS = Edition.of(RuleBook.compiledIn(), new PatternSheets());
  private static final Edition BOTH = WORDS.readingWith(TrainedReader.shipped());

  /** The rule book as it lies here, so that changed words need no compiling. */
  private static final Speaker SPEAKER = new Speaker(UsualBook.read());

  @ParameterizedTest
  @ValueSource(
      strings = {
        "posts-strangers/e1",
        "posts-strangers/e3",
        "posts-strangers/e4",
        "posts-strangers/e6",
        "posts-strangers/e7"
      })
  void no_reply_says_a_sentence_twice(String set) throws IOException {
    StringBuilder report = new StringBuilder();
    List<String> repeated = new ArrayList<>();
    Map<String, JsonNode> posts = posts(set);
    for (ExpectedAnswer post : ExpectedAnswer.in(set)) {
      JsonNode wrote = posts.get(post.id());
      report.append(
          "%n## %s (%s)%n%s%nTEACHER: %s%n"
              .formatted(post.id(), post.kind(), post.text(), wrote.path("reply").asText()));
      ObjectNode text = JsonNodeFactory.instance.objectNode().put("text", post.text());
      report.append("LABELS: ").append(labels(post, text, repeated));
      report.append("READ: ").append(reply(text, repeated));
    }
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", "replies-" + set.replace('/', '-') + ".md"), report);
    assertTrue(repeated.isEmpty(), repeated::toString);
  }

  private static Map<String, JsonNode> posts(String set) throws IOException {
    Map<String, JsonNode> posts = new HashMap<>();
    new YAMLMapper()
        .readTree(Path.of("src/test/resources", set + ".yaml").toFile())
        .forEach(one -> posts.put(one.path("id").textValue(), one));
    return posts;
  }

  /** From the labels; what she asks is no label, so that comes from the text. */
  private static String labels(ExpectedAnswer post, ObjectNode text, List<String> repeated) {
    try {
      JsonNode read = BOTH.read(text).asJson();
      ObjectNode request = post.labels().deepCopy();
      JsonNode draft = BOTH.read(text).fitting();
      for (String field : List.of("asksAbout", "whyNot")) {
        if (draft.has(field)) {
          request.set(field, draft.get(field));
        }
      }
      Answer answer = WORDS.answer(request);
      ObjectNode asked = JsonNodeFactory.instance.objectNode();
      asked.set("questions", read.path("questions"));
      return said(answer.goingOnFrom(answer.soFar(), asked), repeated);
    } catch (FaultyRequest refused) {
      return "refused " + refused.getMessage() + "\n\n";
    }
  }

  private static String reply(ObjectNode text, List<String> repeated) {
    try {
      return said(BOTH.answer(text), repeated);
    } catch (FaultyRequest refused) {
      return "refused " + refused.getMessage() + "\n\n";
    }
  }

  private static String said(Answer answer, List<String> repeated) {
    String reply =
        String.join("\n  ", SPEAKER.paragraphs(answer, new Addressee("Fern", false, null, null)));
    String[] sentences = reply.split("(?<=[.?!]) +|\\n");
    if (Arrays.stream(sentences).distinct().count() < sentences.length) {
      repeated.add(reply);
    }
    return reply
        + "\n      ["
        + answer.verdict()
        + answer.causes().stream()
            .limit(2)
            .map(one -> " " + one.id() + " %.2f".formatted(one.probability()))
            .toList()
        + (answer.read() == null
            ? ""
            : " asks " + answer.read().path("questions").findValuesAsText("kind"))
        + answer.asked().stream().map(one -> one.id() + " " + one.verdict()).toList()
        + " "
        + reply.split("\\s+").length
        + " words]\n\n";
  }
}
