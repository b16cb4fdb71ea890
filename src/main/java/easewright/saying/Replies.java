package easewright.saying;

import easewright.access.PublicAddress;
import easewright.diagnosis.Answer;
import easewright.handbook.GarmentDrawing.Marked;
import easewright.reply.Reply;
import java.util.List;
import java.util.Optional;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.text.LineBreakRendering;
import org.commonmark.renderer.text.TextContentRenderer;

/**
 * Answers ready to post, in three formats with the same content. A site is the part of every link
 * before its path, as in {@link PublicAddress}.
 */
public final class Replies {
  private static final Parser MARKDOWN = Parser.builder().build();
  private static final TextContentRenderer PLAIN =
      TextContentRenderer.builder().lineBreakRendering(LineBreakRendering.SEPARATE_BLOCKS).build();

  private Replies() {}

  /** Plain text. */
  public static String text(Answer answer, ReplyLength length, String site) {
    String said = text(answer.reply());
    return length == ReplyLength.SHORT
        ? said
        : said
            + "\n"
            + PLAIN.render(
                MARKDOWN.parse(AnswerPages.workings(answer, Reply.of(answer), site).render()))
            + "\n";
  }

  /** CommonMark. */
  public static String markdown(Answer answer, ReplyLength length, String site) {
    return length == ReplyLength.SHORT
        ? markdown(answer.reply())
        : spaced(AnswerPages.post(answer.reply(), answer, Reply.of(answer), site).render());
  }

  /** A whole page, with the place of the change drawn. */
  public static String html(Answer answer, ReplyLength length, String site, Garments garments) {
    if (length == ReplyLength.SHORT) {
      return AnswerPages.replyCard(answer.reply(), answer.isDanger()).render();
    }
    Reply reply = Reply.of(answer);
    return AnswerPages.card(answer.reply(), answer, reply, site, marked(answer, reply, garments))
        .render();
  }

  /** Plain text of a reply without an answer. */
  static String text(List<String> paragraphs) {
    return spaced(AnswerPages.replyText(paragraphs).render());
  }

  /** CommonMark of a reply without an answer. */
  static String markdown(List<String> paragraphs) {
    return spaced(AnswerPages.replyPost(paragraphs).render());
  }

  /** A whole page of a reply without an answer. */
  static String html(List<String> paragraphs) {
    return AnswerPages.replyCard(paragraphs, false).render();
  }

  /** Removes the empty lines left by omitted template parts. */
  private static String spaced(String text) {
    return text.replaceAll("\\n{3,}", "\n\n").strip() + "\n";
  }

  private static Marked marked(Answer answer, Reply reply, Garments garments) {
    return Optional.ofNullable(reply.drawing() == null ? null : reply.place())
        .flatMap(
            place ->
                garments
                    .garment(answer.understood().family())
                    .flatMap(drawn -> drawn.marking(place.line().replace(' ', '-'))))
        .orElse(null);
  }
}
