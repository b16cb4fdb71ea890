package easewright.operation;

import easewright.clinic.ClinicStore;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/**
 * Whether clinics can be served. What is wrong is in the log, not here: anybody may ask for this,
 * and files and servers are nobody's business.
 */
@Readiness
@Singleton
class StoreReadiness implements HealthCheck {
  private final ClinicStore store;

  StoreReadiness(ClinicStore store) {
    this.store = store;
  }

  @Override
  public HealthCheckResponse call() {
    return HealthCheckResponse.named("store").status(store.condition().inOrder()).build();
  }
}
