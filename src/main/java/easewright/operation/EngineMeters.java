package easewright.operation;

import easewright.answering.RuleBookService;
import easewright.rulebook.Effort;
import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.FunctionTimer;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.concurrent.TimeUnit;

/** Meters engine time and rules fired; the framework itself counts requests by outcome. */
@Singleton
class EngineMeters {
  void register(@Observes StartupEvent started, MeterRegistry registry, RuleBookService rules) {
    FunctionTimer.builder(
            "easewright.engine",
            rules,
            one -> effort(one).consultations(),
            one -> effort(one).nanos(),
            TimeUnit.NANOSECONDS)
        .description("Time the rule engine took for its consultations")
        .register(registry);
    FunctionCounter.builder("easewright.rules.fired", rules, one -> effort(one).fired())
        .description("Rules that fired")
        .register(registry);
  }

  private static Effort effort(RuleBookService rules) {
    return rules.edition().book().effort();
  }
}
