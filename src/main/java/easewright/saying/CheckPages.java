package easewright.saying;

import easewright.check.ClothAnswer;
import easewright.check.SizeAnswer;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** Checks before cutting, for readers, and the sheets to fill in by hand. */
@CheckedTemplate(basePath = "check")
public final class CheckPages {
  private CheckPages() {}

  /** Markdown: {@code sizePost.md}. */
  public static native TemplateInstance sizePost(SizeAnswer answer);

  /** A page to read or print: {@code sizeCard.html}. */
  public static native TemplateInstance sizeCard(SizeAnswer answer);

  /** Markdown: {@code clothPost.md}. */
  public static native TemplateInstance clothPost(ClothAnswer answer);

  /** A page to read or print: {@code clothCard.html}. */
  public static native TemplateInstance clothCard(ClothAnswer answer);

  /** A blank sheet for measuring: {@code measuringSheet.html}. */
  public static native TemplateInstance measuringSheet();

  /** A blank sheet for testing cloth and elastic, for printing: {@code clothSheet.html}. */
  public static native TemplateInstance clothSheet(ClothAnswer.ProtocolNote protocol, String tools);
}
