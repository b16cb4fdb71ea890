package easewright.modelreader;

import java.util.List;

/**
 * What a language model read in a post, as far as it holds: every id was offered to the model, and
 * every quoted passage stands in the post. Places are indexes into the post (UTF-16), the second
 * after the last character.
 */
public record ModelReading(
    List<SignSaid> signs, List<LengthSaid> lengths, List<CircumstanceSaid> circumstances) {

  /** Nothing read. */
  public static final ModelReading NOTHING = new ModelReading(List.of(), List.of(), List.of());

  public ModelReading {
    signs = List.copyOf(signs);
    lengths = List.copyOf(lengths);
    circumstances = List.copyOf(circumstances);
  }

  /**
   * A sign said to be so or not so.
   *
   * @param present whether it is said to be so
   */
  public record SignSaid(String sign, boolean present, int from, int to) {}

  /**
   * What a number in the passage measures.
   *
   * @param name wire name of a body measurement
   * @param value the length as the model wrote it; only the post's own number may be used
   */
  public record LengthSaid(String name, String value, int from, int to) {}

  /** Something else that bears on comfort and safety. */
  public record CircumstanceSaid(String circumstance, int from, int to) {}
}
