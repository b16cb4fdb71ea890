package easewright.saying;

import easewright.diagnosis.Answer;
import easewright.handbook.GarmentDrawing.Marked;
import easewright.reply.Reply;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/**
 * The answer for readers; its text is in {@code templates/answer}. A site is the part of a link
 * before its path, "" for none; a drawing may be null.
 */
@CheckedTemplate(basePath = "answer")
final class AnswerPages {
  private AnswerPages() {}

  /** Plain text, short: {@code replyText.txt}. */
  static native TemplateInstance replyText(Reply reply, String site);

  /** Markdown, short: {@code replyPost.md}. */
  static native TemplateInstance replyPost(Reply reply, String site);

  /** A page, short: {@code replyCard.html}. */
  static native TemplateInstance replyCard(Reply reply, String site, Marked marked);

  /** Markdown, the details alone: {@code details.md}. */
  static native TemplateInstance details(Answer answer, String site);

  /** Markdown with the details: {@code post.md}. */
  static native TemplateInstance post(Answer answer, Reply reply, String site);

  /** A page with the details: {@code card.html}. */
  static native TemplateInstance card(Answer answer, Reply reply, String site, Marked marked);
}
