package easewright.api;

import io.quarkus.qute.EngineBuilder;
import io.quarkus.qute.Expression;
import io.quarkus.qute.ResultMapper;
import io.quarkus.qute.TemplateNode.Origin;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;

/**
 * Keeps every value of a plain-text template on its line, whatever a pattern sent along is named.
 */
@Singleton
class PlainText implements ResultMapper {

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
    return result.toString().replaceAll("[\\p{Cntrl}\\u2028\\u2029]+", " ");
  }
}
