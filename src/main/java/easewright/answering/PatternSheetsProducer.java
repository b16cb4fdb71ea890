package easewright.answering;

import easewright.pattern.PatternSheets;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Provides the pattern sheets, the shipped ones and those in the operator's folder; the sheets
 * themselves do not depend on the web layer.
 */
@Singleton
public class PatternSheetsProducer {
  private final PatternSheets sheets = new PatternSheets();
  private final Optional<PatternFolder> folder;

  PatternSheetsProducer(
      @ConfigProperty(name = "easewright.patterns") Optional<String> own,
      @ConfigProperty(name = "easewright.patterns.shipped") boolean shipped) {
    folder = own.map(path -> new PatternFolder(Path.of(path), shipped, sheets));
    if (folder.isEmpty()) {
      sheets.offer(List.of(), shipped);
    }
    folder.ifPresent(PatternFolder::watch);
  }

  @Produces
  @Singleton
  PatternSheets patternSheets() {
    return sheets;
  }

  @PreDestroy
  void stop() {
    folder.ifPresent(PatternFolder::stop);
  }

  /** How many sheets are offered. */
  public int offered() {
    return sheets.offered().size();
  }

  /** Each file of the operator's folder that isn't offered as it is, and why. */
  public List<String> faults() {
    return folder.map(PatternFolder::faults).orElse(List.of());
  }
}
