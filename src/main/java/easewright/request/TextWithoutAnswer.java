package easewright.request;

import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** A text rejected because it tells of nothing that could be answered. */
public final class TextWithoutAnswer extends FaultyRequest {
  private final boolean unclear;
  private final String language;

  private TextWithoutAnswer(boolean unclear, String language, Fault fault) {
    super(List.of(fault), 1);
    this.unclear = unclear;
    this.language = language;
  }

  /**
   * About something else, or in another language.
   *
   * @param language its name in English; null where the text was read and is about something else
   */
  static TextWithoutAnswer ofOtherMatter(String language, String problem, String remedy) {
    return new TextWithoutAnswer(
        false, language, new Fault("/" + TextReader.TEXT, problem, remedy, Fault.Kind.IMPOSSIBLE));
  }

  /** A question about fit without anything to go on. */
  static TextWithoutAnswer ofNothing(Fault fault) {
    return new TextWithoutAnswer(true, null, fault);
  }

  /** Whether it asks about the fit of a garment, and tells nothing of it that was understood. */
  public boolean isUnclear() {
    return unclear;
  }

  /** The language that the text is in, where that is why it was rejected; else empty. */
  public Optional<String> language() {
    return Optional.ofNullable(language);
  }

  /** Itself: it is about the text as a whole. */
  @Override
  public FaultyRequest atText(Collection<String> said) {
    return this;
  }
}
