package easewright.answering;

import easewright.pattern.PatternSheets;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;

/**
 * Provides the shipped pattern sheets, read once at start-up; the sheets themselves do not depend
 * on the web layer.
 */
class PatternSheetsProducer {
  @Produces
  @Singleton
  PatternSheets patternSheets() {
    return new PatternSheets();
  }
}
