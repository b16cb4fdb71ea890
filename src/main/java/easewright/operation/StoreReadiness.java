package easewright.operation;

import easewright.clinic.ClinicStore;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/**
 * Readiness of the clinics' store. The reason for a failure is only logged: this endpoint is public
 * and must not reveal files or servers.
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
