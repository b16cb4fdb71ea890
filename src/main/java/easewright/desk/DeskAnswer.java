package easewright.desk;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.reply.Reply;
import easewright.reply.ReplyPart;
import java.util.List;
import java.util.Map;

/**
 * The panel next to the form.
 *
 * @param answer null while the form is empty or faulty
 * @param reply the reply without its question, which has buttons here
 * @param question what to ask next, or null
 * @param read how the post was read; null without one
 * @param post the reply to copy, in the chosen length and format
 * @param given the replies by button that still count, the latest first
 * @param moved what the button just pressed changed; null if none was
 * @param filled values that the post gives to fields, by the name of the field
 * @param drawnAs the family that links to drawings name, "" for the usual one; null if nothing is
 *     drawn
 */
public record DeskAnswer(
    Answer answer,
    Reply reply,
    QuestionNote question,
    ReadText read,
    String post,
    List<QuestionReplies.Given> given,
    List<QuestionReplies.Moved> moved,
    Map<String, String> filled,
    String drawnAs) {
  private static final int MOST_OTHERS = 3;

  static DeskAnswer of(Answer answer, ReadText read, String post, String drawnAs) {
    Reply whole = Reply.of(answer);
    return new DeskAnswer(
        answer,
        whole.without(ReplyPart.QUESTION),
        whole.question(),
        read,
        post,
        List.of(),
        null,
        Map.of(),
        drawnAs);
  }

  /** Whether the signs of such a garment are drawn. */
  public boolean drawn() {
    return drawnAs != null;
  }

  /** The same after replies by button. */
  DeskAnswer after(List<QuestionReplies.Given> replies, List<QuestionReplies.Moved> changed) {
    return new DeskAnswer(answer, reply, question, read, post, replies, changed, filled, drawnAs);
  }

  /** The same with what the post says of the fields. */
  DeskAnswer filling(Map<String, String> fields) {
    return new DeskAnswer(answer, reply, question, read, post, given, moved, fields, drawnAs);
  }

  /** For a post that was read but cannot be answered. */
  static DeskAnswer unanswered(ReadText read) {
    return new DeskAnswer(null, null, null, read, null, List.of(), null, Map.of(), null);
  }

  /** The signs that could not be told, without those replied to by button. */
  public List<String> untold(FilledForm form) {
    return form.values(Conversation.COULD_NOT_TELL).stream()
        .filter(sign -> given.stream().noneMatch(one -> one.sign().equals(sign)))
        .distinct()
        .toList();
  }

  /** Whether there is an answer. */
  public boolean isAnswered() {
    return answer != null;
  }

  /** The other possible questions. */
  public List<QuestionNote> otherQuestions() {
    return question == null
        ? List.of()
        : answer.questions().stream()
            .filter(one -> !one.sign().equals(question.sign()))
            .limit(MOST_OTHERS)
            .toList();
  }
}
