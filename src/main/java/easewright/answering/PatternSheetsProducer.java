package easewright.answering;

import easewright.pattern.PatternSheets;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;

/** The shipped pattern sheets, read once at the start; they know nothing of the web themselves. */
class PatternSheetsProducer {
  @Produces
  @Singleton
  PatternSheets patternSheets() {
    return new PatternSheets();
  }
}
