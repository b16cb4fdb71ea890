package easewright.guard;

import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/**
 * Whether the service was told to stop. What it has taken by then is finished, for as long as
 * {@code quarkus.shutdown.timeout} says; the framework alone would go on taking more.
 */
@Readiness
@Singleton
class Shutdown implements HealthCheck {
  private volatile boolean begun;

  Shutdown() {
    // The framework tells its beans only after it has waited for what is under way.
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
