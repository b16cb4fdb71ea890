package easewright.api;

import easewright.diagnosis.Diagnosis;
import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBook;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;

/** The parts of the service that know nothing of the web, made once at the start. */
class Parts {
  @Produces
  @Singleton
  RuleBook ruleBook() {
    return RuleBook.compiledIn();
  }

  @Produces
  @Singleton
  PatternSheets patternSheets() {
    return new PatternSheets();
  }

  @Produces
  @Singleton
  FittingReader fittingReader(RuleBook book, PatternSheets sheets) {
    return new FittingReader(KnownNames.of(book.catalog(), sheets));
  }

  @Produces
  @Singleton
  Diagnosis diagnosis(RuleBook book, PatternSheets sheets) {
    return new Diagnosis(book, sheets.shipped());
  }
}
