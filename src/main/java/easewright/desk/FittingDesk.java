package easewright.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.FittingService;
import easewright.answering.VoiceService;
import easewright.clinic.Role;
import easewright.diagnosis.Answer;
import easewright.request.FaultyRequest;
import easewright.request.IntakeAnswer;
import easewright.saying.ReplyLength;
import easewright.saying.ReplyWriter;
import easewright.saying.SignNote;
import jakarta.inject.Singleton;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Answers a form of the desk like any request. */
@Singleton
class FittingDesk {
  private static final int MOST_WHY_NOT = 2;

  private final FittingService fittings;
  private final ReplyWriter replies;
  private final VoiceService voices;
  private final SignedIn signedIn;

  FittingDesk(
      FittingService fittings, ReplyWriter replies, VoiceService voices, SignedIn signedIn) {
    this.fittings = fittings;
    this.replies = replies;
    this.voices = voices;
    this.signedIn = signedIn;
  }

  /**
   * The answer to a form.
   *
   * @param site the part of links before their path, in the reply to copy
   * @throws FaultyRequest with the form's faults
   */
  DeskAnswer answer(FilledForm form, String site) {
    ObjectNode request = said(form);
    Answer first = fittings.answer(request);
    ReadText read =
        first.read() == null
            ? null
            : ReadText.of(
                form.value(Conversation.TEXT), first.read(), first.soFar(), form, dangers());
    Answer answer = withWhyNot(StruckReadings.without(form, request, first, fittings, dangers()));
    DeskAnswer shown =
        DeskAnswer.of(answer, read, post(answer, form, site), fittings.drawnAs(answer));
    return (read == null ? shown : shown.filling(FieldsOfPost.of(first.soFar())))
        .after(QuestionReplies.given(form, fittings.everySign()), moved(form, answer));
  }

  /** What the button just pressed changed; null if none was, or nothing else is reported. */
  private List<QuestionReplies.Moved> moved(FilledForm form, Answer now) {
    return QuestionReplies.pressed(form)
        .map(sign -> QuestionReplies.without(form, sign))
        .filter(Conversation::isStarted)
        .map(
            before -> {
              ObjectNode request = said(before);
              return StruckReadings.without(
                  before, request, fittings.answer(request), fittings, dangers());
            })
        .map(before -> QuestionReplies.moved(before, now))
        .orElse(null);
  }

  /** The form as a request, in the voice of the clinic that the visitor answers for, if any. */
  private ObjectNode said(FilledForm form) {
    ObjectNode request = request(form);
    return signedIn
        .who()
        .map(ClinicViewer::caller)
        .filter(one -> one.role() != Role.WEARER)
        .map(one -> voices.in(one, request))
        .orElse(request);
  }

  /** The form as a request; a danger reported earlier applies until it is ticked as not seen. */
  ObjectNode request(FilledForm form) {
    Map<String, String> ids = new HashMap<>();
    fittings.changes().forEach((id, name) -> ids.put(name.toLowerCase(Locale.ROOT), id));
    fittings.everySign().forEach(sign -> ids.put(sign.name().toLowerCase(Locale.ROOT), sign.id()));
    ObjectNode request = Conversation.request(ToileFields.named(form, ids), dangers());
    put(request, "nickname", form.value("called"));
    put(request, "voice", form.value("voice"));
    return request;
  }

  private static void put(ObjectNode request, String field, String value) {
    if (!value.isEmpty()) {
      request.put(field, value);
    }
  }

  private Set<String> dangers() {
    return fittings.everySign().stream()
        .filter(SignNote::redFlag)
        .map(SignNote::id)
        .collect(Collectors.toSet());
  }

  /** How the post was read if it cannot be answered. */
  DeskAnswer unanswered(FilledForm form) {
    String text = form.value(Conversation.TEXT);
    if (text.isEmpty()) {
      return DeskAnswer.unanswered(null);
    }
    try {
      IntakeAnswer read = fittings.readText(text);
      return DeskAnswer.unanswered(
          ReadText.of(text, read.asJson(), read.fitting(), form, dangers()));
    } catch (FaultyRequest tooLong) {
      return DeskAnswer.unanswered(null);
    }
  }

  /** Why the next causes are not first can be asked only once they are known. */
  private Answer withWhyNot(Answer answer) {
    if (answer.causes().size() < 2 || !answer.whyNot().isEmpty()) {
      return answer;
    }
    ObjectNode again = answer.soFar().deepCopy();
    ArrayNode whyNot = again.putArray("whyNot");
    answer.causes().stream().skip(1).limit(MOST_WHY_NOT).forEach(one -> whyNot.add(one.id()));
    Answer answered = fittings.answer(again);
    return answered.goingOnFrom(answer.soFar(), answer.read());
  }

  private String post(Answer answer, FilledForm form, String site) {
    ReplyLength length = form.value("length").equals("long") ? ReplyLength.LONG : ReplyLength.SHORT;
    return form.value("markup").equals("plain")
        ? replies.text(answer, length, site)
        : replies.markdown(answer, length, site);
  }
}
