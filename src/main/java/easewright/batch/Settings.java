package easewright.batch;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.util.Optional;

/** What is configured of batches, below {@code easewright.batch}. */
@ConfigMapping(prefix = "easewright.batch")
interface Settings {
  /** The brokers to begin with, as {@code host:port,host:port}; without them there is no batch. */
  Optional<String> brokers();

  /** Workers of one group share the fittings; a new group begins with the oldest. */
  @WithDefault("easewright")
  String group();

  /** How many workers this process runs. */
  @WithDefault("1")
  int workers();

  /** Topics. */
  Topics topic();

  /**
   * A properties file as Kafka's own tools take it, with what its clients need besides: keys,
   * certificates, timeouts.
   */
  Optional<Path> clientConfig();

  /** The names of the topics. */
  interface Topics {
    /** Fittings are taken from here. */
    @WithDefault("easewright.fittings")
    String fittings();

    /** Answers are put here. */
    @WithDefault("easewright.answers")
    String answers();

    /** Problems are put here. */
    @WithDefault("easewright.set-aside")
    String setAside();
  }
}
