package easewright.operation;

import easewright.clinic.ClinicStore;
import easewright.clinic.StoreAddress;
import easewright.clinic.StoreAway;
import io.quarkus.logging.Log;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Provides the clinics' store at the configured location. Opens an existing store in the background
 * at start-up, so that the log reports faults at once; does not create a missing one.
 */
@Singleton
class ClinicStoreProducer {
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

  ClinicStoreProducer(
      @ConfigProperty(name = "easewright.clinic.store") Path folder,
      @ConfigProperty(name = "easewright.clinic.url") Optional<String> url,
      @ConfigProperty(name = "easewright.clinic.user", defaultValue = "easewright") String user,
      @ConfigProperty(name = "easewright.clinic.password") Optional<String> password,
      @ConfigProperty(name = "easewright.clinic.clock-right-on") Optional<LocalDate> clockRightOn,
      @ConfigProperty(name = "easewright.limit.store") Duration patience) {
    store =
        new ClinicStore(
            url.map(server -> StoreAddress.onServer(server, user, password.orElse("")))
                .orElseGet(() -> StoreAddress.inFolder(folder)),
            Clock.systemUTC(),
            patience,
            clockRightOn.orElse(null),
            new StoreLog());
  }

  @Produces
  @Singleton
  ClinicStore store() {
    return store;
  }

  /**
   * @param serving false on the command line, which leaves the clinics to the service beside it
   */
  void begin(
      @Observes StartupEvent started,
      @ConfigProperty(name = "quarkus.http.host-enabled", defaultValue = "true") boolean serving) {
    if (!serving) {
      return;
    }
    daily.execute(store::condition);
    daily.scheduleWithFixedDelay(this::expire, FIRST_EXPIRY_MINUTES, DAY_MINUTES, TimeUnit.MINUTES);
  }

  private void expire() {
    try {
      store.retention().expireAll();
    } catch (StoreAway logged) {
      // The store logs the reason; retried after a day, and whenever a clinic is used.
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
