package easewright.guard;

import io.quarkus.runtime.StartupEvent;
import io.vertx.core.Vertx;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Passes the configuration to {@link ConnectionBounds} and runs its checks at intervals. */
@Singleton
class ConnectionSettings {
  private static final int CHECK_MS = 100;

  ConnectionSettings(
      @ConfigProperty(name = "easewright.limit.connections") int most,
      @ConfigProperty(name = "easewright.limit.connections-of-one-place") int mostOfAddress,
      @ConfigProperty(name = "easewright.limit.arrival") Duration patience,
      @ConfigProperty(name = "quarkus.http.proxy.trusted-proxies") Optional<String> proxies) {
    // All clients behind a proxy share its address.
    ConnectionBounds.PROCESS.set(most, proxies.isPresent() ? most : mostOfAddress, patience);
  }

  void begin(@Observes StartupEvent started, Vertx vertx) {
    vertx.setPeriodic(CHECK_MS, tick -> ConnectionBounds.PROCESS.closeOffenders());
  }
}
