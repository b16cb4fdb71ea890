package easewright.clinic;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * How the replies of a clinic are said, in its teachers' own way.
 *
 * @param plain whether to leave out thanks and praise
 * @param units "metric" or "imperial", for requests that name none; null to follow each request
 * @param opening a line at the start of each reply, or null
 * @param closing a line at its end, or null
 * @param snippets texts that teachers often add to a reply
 * @param patterns what the clinic calls the shipped patterns
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ClinicVoice(
    boolean plain,
    String units,
    String opening,
    String closing,
    List<Snippet> snippets,
    List<PatternName> patterns) {
  /** The most snippets. */
  public static final int MOST_SNIPPETS = 30;

  /** The most names of patterns. */
  public static final int MOST_PATTERNS = 30;

  /** The longest opening or closing line, characters. */
  public static final int LONGEST_LINE = TextLimits.LONGEST_NAME;

  /** The voice of a clinic that has chosen none. */
  public static final ClinicVoice USUAL =
      new ClinicVoice(false, null, null, null, List.of(), List.of());

  public ClinicVoice {
    snippets = snippets == null ? List.of() : List.copyOf(snippets);
    patterns = patterns == null ? List.of() : List.copyOf(patterns);
  }

  /**
   * A text to add to a reply.
   *
   * @param name what it is listed under
   */
  public record Snippet(String name, String text) {}

  /**
   * What the clinic calls a pattern.
   *
   * @param sheet the id of a shipped sheet
   */
  public record PatternName(String sheet, String name) {}

  /**
   * A voice as it is stored.
   *
   * @param version increases by one with each change
   */
  public record Kept(ClinicVoice voice, int version) {}
}
