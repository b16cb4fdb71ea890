package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.api.FaultyRequest;
import easewright.api.FittingResource;
import easewright.api.IntakeAnswer;
import easewright.api.IntakeResource;
import easewright.api.SignResource;
import easewright.diagnosis.Answer;
import jakarta.inject.Singleton;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;

/** Answers a form of the desk through the endpoints, so that it is answered as any request. */
@Singleton
class FittingDesk {
  private static final int MOST_WHY_NOT = 2;

  private final FittingResource fittings;
  private final IntakeResource posts;
  private final SignResource signs;

  FittingDesk(FittingResource fittings, IntakeResource posts, SignResource signs) {
    this.signs = signs;
    this.fittings = fittings;
    this.posts = posts;
  }

  /**
   * The form's answer.
   *
   * @param site what stands before the path of links in the reply to copy
   * @throws FaultyRequest naming what is wrong with the form
   */
  DeskAnswer answer(FilledForm form, String site) {
    ObjectNode request = request(form);
    Answer first = fittings.answer(bytes(request));
    ReadText read =
        first.read() == null
            ? null
            : ReadText.of(
                form.value(Conversation.TEXT),
                first.read(),
                first.soFar(),
                Conversation.told(form));
    Answer answer = withWhyNot(first);
    return DeskAnswer.of(answer, read, post(answer, form, site));
  }

  /** The form as a request; a danger told earlier stands until it is ticked as not seen. */
  ObjectNode request(FilledForm form) {
    return Conversation.request(
        form,
        signs.all().stream()
            .filter(SignResource.SignNote::redFlag)
            .map(SignResource.SignNote::id)
            .collect(Collectors.toSet()));
  }

  /** How the post is read where it comes to no answer. */
  DeskAnswer unanswered(FilledForm form) {
    String text = form.value(Conversation.TEXT);
    if (text.isEmpty()) {
      return DeskAnswer.unanswered(null);
    }
    try {
      IntakeAnswer read =
          posts.json(bytes(JsonNodeFactory.instance.objectNode().put(Conversation.TEXT, text)));
      return DeskAnswer.unanswered(
          ReadText.of(text, read.asJson(), read.fitting(), Conversation.told(form)));
    } catch (FaultyRequest tooLong) {
      return DeskAnswer.unanswered(null);
    }
  }

  /** Why the next causes are not first is asked once they are known. */
  private Answer withWhyNot(Answer answer) {
    if (answer.causes().size() < 2 || !answer.whyNot().isEmpty()) {
      return answer;
    }
    ObjectNode again = answer.soFar().deepCopy();
    ArrayNode whyNot = again.putArray("whyNot");
    answer.causes().stream().skip(1).limit(MOST_WHY_NOT).forEach(one -> whyNot.add(one.id()));
    Answer told = fittings.answer(bytes(again));
    return told.goingOnFrom(answer.soFar(), answer.read());
  }

  private String post(Answer answer, FilledForm form, String site) {
    boolean plain = form.value("markup").equals("plain");
    if (form.value("length").equals("long")) {
      return plain ? fittings.text(answer, site) : fittings.post(answer, site);
    }
    return plain ? fittings.shortText(answer, site) : fittings.shortPost(answer, site);
  }

  private static byte[] bytes(JsonNode json) {
    return json.toString().getBytes(StandardCharsets.UTF_8);
  }
}
