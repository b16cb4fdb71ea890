package easewright.answering;

import easewright.modelreader.ModelReader;
import easewright.modelreader.ModelSettings;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** The language model that the operator named; none unless its address is set. */
@Singleton
public class LanguageModel {
  private final Optional<ModelReader> reader;

  LanguageModel(
      @ConfigProperty(name = "easewright.model.address") Optional<String> address,
      @ConfigProperty(name = "easewright.model.name") Optional<String> name,
      @ConfigProperty(name = "easewright.model.key") Optional<String> key,
      @ConfigProperty(name = "easewright.model.timeout") Duration timeout,
      @ConfigProperty(name = "easewright.model.at-once") int atOnce) {
    this.reader =
        address.map(
            one -> new ModelReader(ModelSettings.of(one, name.orElse(""), key, timeout, atOnce)));
  }

  /** The reader that asks it; empty if none is named. */
  public Optional<ModelReader> reader() {
    return reader;
  }
}
