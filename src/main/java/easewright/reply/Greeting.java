package easewright.reply;

/** The first line of a reply, and the teacher's own line after it. */
final class Greeting {
  private static final String GREET = "greet";

  private Greeting() {}

  /**
   * Says them.
   *
   * @param danger whether the reply is about a danger, where no line of her own is wanted
   * @param thanks what to thank for; null for nothing
   */
  static void say(
      boolean danger, String thanks, Addressee to, SpokenPhrases phrases, Pieces pieces) {
    String key = to.nickname() == null ? GREET : GREET + "-named";
    boolean plain = to.plain() || thanks == null;
    String name = to.nickname() == null ? "" : to.nickname();
    pieces.always(
        plain
            ? phrases.say(key + "-plain", "name", name)
            : phrases.say(key, "name", name, "thanks", SpokenPhrases.lower(thanks)));
    if (!danger) {
      pieces.own(to.opening());
    }
    pieces.paragraph();
  }
}
