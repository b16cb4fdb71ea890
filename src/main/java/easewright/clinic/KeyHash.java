package easewright.clinic;

import java.security.MessageDigest;
import java.security.SecureRandom;
import org.apache.commons.codec.DecoderException;
import org.apache.commons.codec.binary.Hex;
import org.apache.commons.codec.digest.HmacAlgorithms;
import org.apache.commons.codec.digest.HmacUtils;

/**
 * What is stored of a key: enough to verify it, not enough to recover it. NIST SP 800-63B, section
 * 5.1.2.2, allows secrets of 112 bits or more to be stored with an approved hash without
 * stretching; a slow hash would only cost every request a tenth of a second.
 *
 * @param salt 16 random bytes, hexadecimal
 * @param hash HMAC-SHA-256 of the secret under the salt, hexadecimal
 */
record KeyHash(String salt, String hash) {
  private static final int SALT_BYTES = 16;

  static KeyHash on(Key key, SecureRandom random) {
    byte[] salt = new byte[SALT_BYTES];
    random.nextBytes(salt);
    return new KeyHash(Hex.encodeHexString(salt), Hex.encodeHexString(hash(salt, key)));
  }

  /** Whether this is the hash of the key; compares in constant time. */
  boolean opensTo(Key key) {
    try {
      return MessageDigest.isEqual(Hex.decodeHex(hash), hash(Hex.decodeHex(salt), key));
    } catch (DecoderException malformed) {
      return false;
    }
  }

  private static byte[] hash(byte[] salt, Key key) {
    // The role is hashed too, so that changing its letter does not give another valid key.
    return new HmacUtils(HmacAlgorithms.HMAC_SHA_256, salt)
        .hmac(key.role().letter() + key.secret());
  }
}
