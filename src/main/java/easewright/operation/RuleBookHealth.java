package easewright.operation;

import easewright.answering.RuleBookService;
import easewright.answering.RuleFolder;
import easewright.diagnosis.Answer.RuleBookStamp;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
import org.eclipse.microprofile.health.Readiness;

/**
 * Reports the rule book in use. Stays up while its folder holds a faulty one, since the previous
 * book still answers; the faults are then listed.
 */
@Readiness
@Singleton
class RuleBookHealth implements HealthCheck {
  private static final int MOST_LISTED = 20;

  private final RuleBookService rules;

  RuleBookHealth(RuleBookService rules) {
    this.rules = rules;
  }

  @Override
  public HealthCheckResponse call() {
    RuleBookStamp stamp = rules.ruleBook();
    RuleFolder.State state = rules.state();
    HealthCheckResponseBuilder answer =
        HealthCheckResponse.named("rule book")
            .up()
            .withData("version", stamp.version())
            .withData("hash", stamp.hash())
            .withData("faults of the changed book", state.problems().size());
    for (int i = 0; i < Math.min(MOST_LISTED, state.problems().size()); i++) {
      answer.withData("fault " + (i + 1), state.problems().get(i).text());
    }
    return answer.build();
  }
}
