package easewright.guard;

import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/**
 * Whether shutdown has begun. Requests accepted before are finished within {@code
 * quarkus.shutdown.timeout}; the framework alone would keep accepting more.
 */
@Readiness
@Singleton
class Shutdown implements HealthCheck {
  private volatile boolean begun;

  Shutdown() {
    // The framework notifies its beans only after it has waited for requests in progress.
    Runtime.getRuntime().addShutdownHook(new Thread(() -> begun = true, "stopping"));
  }

  boolean begun() {
    return begun;
  }

  @Override
  public HealthCheckResponse call() {
    return HealthCheckResponse.named("taking requests").status(!begun).build();
  }
}
