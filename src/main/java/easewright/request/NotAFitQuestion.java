package easewright.request;

import java.util.List;
import java.util.Optional;

/** A text rejected because it is about something else, or in a language that is not read. */
public final class NotAFitQuestion extends FaultyRequest {
  private final String language;

  /**
   * @param language its name in English; null where the text was read and is about something else
   */
  NotAFitQuestion(String language, String problem, String remedy) {
    super(List.of(new Fault("/" + TextReader.TEXT, problem, remedy, Fault.Kind.IMPOSSIBLE)), 1);
    this.language = language;
  }

  /** The language that the text is in; empty where it was read and is about something else. */
  public Optional<String> language() {
    return Optional.ofNullable(language);
  }
}
