package easewright.request;

/**
 * Control characters, and those that embed, override or isolate a direction of writing (Unicode
 * Annex 9, 2.1 to 2.6).
 */
final class HiddenCharacters {
  private HiddenCharacters() {}

  static boolean areIn(String text) {
    return text.chars().anyMatch(HiddenCharacters::isOne);
  }

  private static boolean isOne(int sign) {
    return Character.isISOControl(sign)
        || sign >= 0x202A && sign <= 0x202E
        || sign >= 0x2066 && sign <= 0x2069;
  }
}
