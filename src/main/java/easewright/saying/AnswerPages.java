package easewright.saying;

import easewright.diagnosis.Answer;
import easewright.handbook.GarmentDrawing.Marked;
import easewright.reply.Reply;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import java.util.List;

/**
 * The answer for readers; its text is in {@code templates/answer}. A site is the part of a link
 * before its path, "" for none; a drawing may be null.
 */
@CheckedTemplate(basePath = "answer")
final class AnswerPages {
  private AnswerPages() {}

  /** Plain text, short: {@code replyText.txt}. */
  static native TemplateInstance replyText(List<String> paragraphs);

  /** Markdown, short: {@code replyPost.md}. */
  static native TemplateInstance replyPost(List<String> paragraphs);

  /** A page, short: {@code replyCard.html}. */
  static native TemplateInstance replyCard(List<String> paragraphs, boolean danger);

  /** Markdown, the summary and the details after the reply: {@code workings.md}. */
  static native TemplateInstance workings(Answer answer, Reply reply, String site);

  /** Markdown with the details: {@code post.md}. */
  static native TemplateInstance post(
      List<String> paragraphs, Answer answer, Reply reply, String site);

  /** A page with the details: {@code card.html}. */
  static native TemplateInstance card(
      List<String> paragraphs, Answer answer, Reply reply, String site, Marked marked);
}
