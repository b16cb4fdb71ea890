package easewright.operation;

import easewright.answering.PatternSheetsProducer;
import jakarta.inject.Singleton;
import java.util.List;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
import org.eclipse.microprofile.health.Readiness;

/**
 * Reports how many pattern sheets are offered. Stays up while the operator's folder holds a faulty
 * one, since the others serve; the faults are then listed.
 */
@Readiness
@Singleton
class PatternSheetsHealth implements HealthCheck {
  private static final int MOST_LISTED = 20;

  private final PatternSheetsProducer sheets;

  PatternSheetsHealth(PatternSheetsProducer sheets) {
    this.sheets = sheets;
  }

  @Override
  public HealthCheckResponse call() {
    List<String> faults = sheets.faults();
    HealthCheckResponseBuilder answer =
        HealthCheckResponse.named("pattern sheets")
            .up()
            .withData("offered", sheets.offered())
            .withData("faulty", faults.size());
    for (int i = 0; i < Math.min(MOST_LISTED, faults.size()); i++) {
      answer.withData("fault " + (i + 1), faults.get(i));
    }
    return answer.build();
  }
}
