package easewright.clinic;

import java.security.SecureRandom;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.codec.binary.Base32;

/**
 * A key with its secret; shown once and never stored. Its text is {@code ewo-<id>-<secret>}, with h
 * or w for o, in lower-case base 32 (RFC 4648) that survives being read aloud.
 *
 * @param role encoded in its third letter
 * @param id identifies the key in lists; not secret
 * @param secret {@value #SECRET_BYTES} random bytes
 */
public record Key(Role role, String id, String secret) {
  /** 80 bits: collisions are unlikely. */
  private static final int ID_BYTES = 10;

  /** 200 bits: cannot be guessed. */
  private static final int SECRET_BYTES = 25;

  private static final Pattern FORM = Pattern.compile("ew([ohw])-([a-z2-7]{16})-([a-z2-7]{40})");

  private static final Pattern ID = Pattern.compile("[a-z2-7]{16}");

  static Key make(Role role, SecureRandom random) {
    return new Key(role, newId(random), letters(random, SECRET_BYTES));
  }

  /** Parses a key; empty if the text cannot be one. */
  static Optional<Key> parse(String text) {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      return Optional.empty();
    }
    for (Role role : Role.values()) {
      if (role.letter() == form.group(1).charAt(0)) {
        return Optional.of(new Key(role, form.group(2), form.group(3)));
      }
    }
    return Optional.empty();
  }

  /** An id for a key, a clinic or a case: 16 letters and digits that cannot be enumerated. */
  static String newId(SecureRandom random) {
    return letters(random, ID_BYTES);
  }

  /** Whether a text is a possible id. Some engines fail on impossible ones, such as NUL. */
  static boolean isId(String text) {
    return ID.matcher(text).matches();
  }

  private static String letters(SecureRandom random, int bytes) {
    byte[] drawn = new byte[bytes];
    random.nextBytes(drawn);
    return new Base32().encodeToString(drawn).toLowerCase(Locale.ROOT);
  }

  /** The text given to its holder. */
  public String text() {
    return "ew" + role.letter() + "-" + id + "-" + secret;
  }

  /** Without the secret, which must not reach a log. */
  @Override
  public String toString() {
    return "key " + id;
  }
}
