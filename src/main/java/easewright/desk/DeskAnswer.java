package easewright.desk;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.reply.Reply;
import easewright.reply.ReplyPart;
import java.util.List;

/**
 * What stands beside the form.
 *
 * @param answer null while nothing is told, or while what is told is at fault
 * @param reply what is said of it, its question aside, which has buttons here
 * @param question what to ask next, or null
 * @param read how the post was read; null without one
 * @param post the reply to copy, in the length and form chosen
 */
public record DeskAnswer(
    Answer answer, Reply reply, QuestionNote question, ReadText read, String post) {
  private static final int MOST_OTHERS = 3;

  static DeskAnswer of(Answer answer, ReadText read, String post) {
    Reply whole = Reply.of(answer);
    return new DeskAnswer(answer, whole.without(ReplyPart.QUESTION), whole.question(), read, post);
  }

  /** With a post that was read but comes to no answer. */
  static DeskAnswer unanswered(ReadText read) {
    return new DeskAnswer(null, null, null, read, null);
  }

  /** Whether there is an answer. */
  public boolean isAnswered() {
    return answer != null;
  }

  /** What else could be asked. */
  public List<QuestionNote> otherQuestions() {
    return question == null
        ? List.of()
        : answer.questions().stream()
            .filter(one -> !one.sign().equals(question.sign()))
            .limit(MOST_OTHERS)
            .toList();
  }
}
