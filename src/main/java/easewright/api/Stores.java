package easewright.api;

import easewright.clinic.ClinicStore;
import easewright.clinic.StoreAddress;
import io.quarkus.logging.Log;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** The clinics' store, where the configuration says it is. Nothing is opened at start. */
@Singleton
class Stores {
  private static final int FIRST_EXPIRY_MINUTES = 10;
  private static final int DAY_MINUTES = 24 * 60;

  private final ClinicStore store;
  private final ScheduledExecutorService daily =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "clinic-retention");
            thread.setDaemon(true);
            return thread;
          });

  Stores(
      @ConfigProperty(name = "easewright.clinic.store") Path folder,
      @ConfigProperty(name = "easewright.clinic.url") Optional<String> url,
      @ConfigProperty(name = "easewright.clinic.user", defaultValue = "easewright") String user,
      @ConfigProperty(name = "easewright.clinic.password") Optional<String> password,
      @ConfigProperty(name = "easewright.limit.store") Duration patience) {
    store =
        new ClinicStore(
            url.map(server -> StoreAddress.onServer(server, user, password.orElse("")))
                .orElseGet(() -> StoreAddress.inFolder(folder)),
            Clock.systemUTC(),
            patience);
  }

  @Produces
  @Singleton
  ClinicStore store() {
    return store;
  }

  void begin(@Observes StartupEvent started) {
    daily.scheduleWithFixedDelay(this::expire, FIRST_EXPIRY_MINUTES, DAY_MINUTES, TimeUnit.MINUTES);
  }

  private void expire() {
    try {
      store.retention().expireAll();
    } catch (RuntimeException failure) {
      Log.error("Old cases could not be deleted; tried again in a day", failure);
    }
  }

  @PreDestroy
  void end() {
    daily.shutdown();
    store.close();
  }
}
