package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.diagnosis.Answer.SignNote;
import easewright.request.FaultyRequest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** How the posts of one file are read and answered, beside their labels. */
final class CountedPosts {
  final AnswersCount answers = new AnswersCount();
  int right;
  int wrong;
  int labelled;

  CountedPosts(String set, Edition edition) throws IOException {
    for (ExpectedAnswer post : ExpectedAnswer.in(set)) {
      answers.addText(post, edition);
    }
    JsonNode posts =
        new YAMLMapper().readTree(Path.of("src/test/resources", set + ".yaml").toFile());
    for (JsonNode post : posts) {
      Set<String> wanted = new HashSet<>(post.path("present").findValuesAsText("sign"));
      Set<String> maybe = new HashSet<>();
      post.path("maybe").forEach(one -> maybe.add(one.asText()));
      labelled += wanted.size();
      for (SignNote sign : read(post.path("text").asText(), edition)) {
        if (sign.present() && wanted.contains(sign.id())) {
          right++;
        } else if (sign.present() && !maybe.contains(sign.id())) {
          wrong++;
        }
      }
    }
  }

  private static List<SignNote> read(String text, Edition edition) {
    try {
      return edition
          .answer(JsonNodeFactory.instance.objectNode().put("text", text))
          .understood()
          .signs();
    } catch (FaultyRequest refused) {
      return List.of();
    }
  }

  double precision() {
    return right / (double) Math.max(1, right + wrong);
  }

  double recall() {
    return right / (double) labelled;
  }

  String report(String name) {
    return "%nSigns of %s: %.2f, %.2f of %d%n%n%s%s"
        .formatted(name, precision(), recall(), labelled, AnswersCount.HEAD, answers.row(name));
  }
}
