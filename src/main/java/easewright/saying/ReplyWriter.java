package easewright.saying;

import easewright.access.PublicAddress;
import easewright.diagnosis.Answer;
import jakarta.inject.Singleton;
import java.util.List;

/**
 * Writes answers as replies to post, with links to this service. {@code calledAs} is the part
 * before the path of the address that the client called; "" if unknown.
 */
@Singleton
public class ReplyWriter {
  private final PublicAddress address;
  private final Garments garments;

  ReplyWriter(PublicAddress address, Garments garments) {
    this.address = address;
    this.garments = garments;
  }

  /** A reply without an answer, in CommonMark. */
  public String markdown(List<String> paragraphs) {
    return Replies.markdown(paragraphs);
  }

  /** A reply without an answer, as a whole HTML page. */
  public String html(List<String> paragraphs) {
    return Replies.html(paragraphs);
  }

  /** A reply without an answer, as plain text. */
  public String text(List<String> paragraphs) {
    return Replies.text(paragraphs);
  }

  /** A reply in CommonMark. */
  public String markdown(Answer answer, ReplyLength length, String calledAs) {
    return Replies.markdown(answer, length, address.site(calledAs));
  }

  /** A reply as a whole HTML page. */
  public String html(Answer answer, ReplyLength length, String calledAs) {
    return Replies.html(answer, length, address.site(calledAs), garments);
  }

  /** A reply as plain text. */
  public String text(Answer answer, ReplyLength length, String calledAs) {
    return Replies.text(answer, length, address.site(calledAs));
  }
}
