package easewright.saying;

import io.quarkus.qute.EngineBuilder;
import io.quarkus.qute.Expression;
import io.quarkus.qute.ResultMapper;
import io.quarkus.qute.TemplateNode.Origin;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.regex.Pattern;

/**
 * Keeps every value of a plain-text template on one line, whatever the name of an uploaded pattern
 * contains.
 */
@Singleton
class PlainText implements ResultMapper {
  private static final Pattern UNSEEN =
      Pattern.compile("[\\p{Cntrl}\\u0085\\u2028-\\u202E\\u2066-\\u2069]+");

  void register(@Observes EngineBuilder engine) {
    engine.addResultMapper(this);
  }

  @Override
  public int getPriority() {
    return 10;
  }

  @Override
  public boolean appliesTo(Origin origin, Object result) {
    return origin
        .getVariant()
        .filter(variant -> variant.getContentType().startsWith("text/plain"))
        .isPresent();
  }

  @Override
  public String map(Object result, Expression expression) {
    return UNSEEN.matcher(result.toString()).replaceAll(" ");
  }

  /** Whether a character starts a new line or changes the text direction. */
  static boolean breaksTheLine(char sign) {
    return Character.isISOControl(sign)
        || sign >= '\u2028' && sign <= '\u202E'
        || sign >= '\u2066' && sign <= '\u2069';
  }
}
