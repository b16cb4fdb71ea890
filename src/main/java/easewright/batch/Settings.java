package easewright.batch;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.util.Optional;

/** Configuration of batches, below {@code easewright.batch}. */
@ConfigMapping(prefix = "easewright.batch")
interface Settings {
  /** The bootstrap brokers, as {@code host:port,host:port}; without them batches are off. */
  Optional<String> brokers();

  /** Workers of one group share the fittings; a new group starts with the oldest. */
  @WithDefault("easewright")
  String group();

  /** Number of workers in this process. */
  @WithDefault("1")
  int workers();

  /** Topics. */
  Topics topic();

  /**
   * A properties file as used by Kafka's own tools, with further client settings: keys,
   * certificates, timeouts.
   */
  Optional<Path> clientConfig();

  /** The names of the topics. */
  interface Topics {
    /** Input topic of fittings. */
    @WithDefault("easewright.fittings")
    String fittings();

    /** Output topic of answers. */
    @WithDefault("easewright.answers")
    String answers();

    /** Output topic of problems. */
    @WithDefault("easewright.set-aside")
    String setAside();
  }
}
