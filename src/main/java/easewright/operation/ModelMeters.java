package easewright.operation;

import easewright.answering.LanguageModel;
import easewright.modelreader.ModelOutcome;
import easewright.modelreader.ModelReader;
import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.Locale;

/** Counts the outcomes of asking the language model, if there is one. */
@Singleton
class ModelMeters {
  void register(@Observes StartupEvent started, MeterRegistry registry, LanguageModel model) {
    model.reader().ifPresent(reader -> register(reader, registry));
  }

  private static void register(ModelReader reader, MeterRegistry registry) {
    for (ModelOutcome outcome : ModelOutcome.values()) {
      FunctionCounter.builder("easewright.model.readings", reader, one -> one.count(outcome))
          .tag("outcome", outcome.name().toLowerCase(Locale.ROOT))
          .description("Posts that the language model was to read, by how that ended")
          .register(registry);
    }
    FunctionCounter.builder("easewright.model.dropped", reader, ModelReader::dropped)
        .description(
            "Items of its answers that quoted no words of the post, or named nothing known")
        .register(registry);
  }
}
