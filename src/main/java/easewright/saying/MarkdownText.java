package easewright.saying;

import io.quarkus.qute.EngineBuilder;
import io.quarkus.qute.Expression;
import io.quarkus.qute.RawString;
import io.quarkus.qute.ResultMapper;
import io.quarkus.qute.TemplateNode.Origin;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;

/**
 * Escapes every value of a Markdown template (CommonMark 0.31, 2.4 backslash escapes), as Qute does
 * for HTML. An uploaded pattern may have any name.
 */
@Singleton
class MarkdownText implements ResultMapper {
  private static final String SPECIAL = "\\`*_[]<>#|~@!";

  void register(@Observes EngineBuilder engine) {
    engine.addResultMapper(this);
  }

  @Override
  public int getPriority() {
    return 10;
  }

  @Override
  public boolean appliesTo(Origin origin, Object result) {
    return !(result instanceof RawString)
        && origin
            .getVariant()
            .filter(variant -> variant.getContentType().startsWith("text/markdown"))
            .isPresent();
  }

  @Override
  public String map(Object result, Expression expression) {
    // Only Markdown from the rule book is marked "raw".
    return result instanceof RawString written ? written.toString() : escape(result.toString());
  }

  static String escape(String text) {
    StringBuilder out = new StringBuilder(text.length() + 8);
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (PlainText.breaksTheLine(c)) {
        out.append(' '); // a new line could start a list, a heading or a rule
      } else if (c == '&') {
        out.append("&amp;");
      } else if (SPECIAL.indexOf(c) >= 0 || startsLink(text, i)) {
        out.append('\\').append(c);
      } else {
        out.append(c);
      }
    }
    return out.toString();
  }

  /** "://" and "www." become links on many boards even without brackets. */
  private static boolean startsLink(String text, int i) {
    return text.startsWith("://", i)
        || text.charAt(i) == '.' && i >= 3 && text.regionMatches(true, i - 3, "www", 0, 3);
  }
}
