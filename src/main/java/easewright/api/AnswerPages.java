package easewright.api;

import easewright.diagnosis.Answer;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** The answer as people read it; everything said stands in {@code templates/answer}. */
@CheckedTemplate(basePath = "answer")
public final class AnswerPages {
  private AnswerPages() {}

  /** Markdown to post on a help board: {@code post.md}. */
  public static native TemplateInstance post(Answer answer);

  /** A page to read or print: {@code card.html}. */
  static native TemplateInstance card(Answer answer);
}
