package easewright.desk;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.reply.Reply;
import easewright.reply.ReplyPart;
import java.util.List;

/**
 * The panel next to the form.
 *
 * @param answer null while the form is empty or faulty
 * @param reply the reply without its question, which has buttons here
 * @param question what to ask next, or null
 * @param read how the post was read; null without one
 * @param post the reply to copy, in the chosen length and format
 */
public record DeskAnswer(
    Answer answer, Reply reply, QuestionNote question, ReadText read, String post) {
  private static final int MOST_OTHERS = 3;

  static DeskAnswer of(Answer answer, ReadText read, String post) {
    Reply whole = Reply.of(answer);
    return new DeskAnswer(answer, whole.without(ReplyPart.QUESTION), whole.question(), read, post);
  }

  /** For a post that was read but cannot be answered. */
  static DeskAnswer unanswered(ReadText read) {
    return new DeskAnswer(null, null, null, read, null);
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
