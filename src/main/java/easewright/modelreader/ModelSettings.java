package easewright.modelreader;

import java.net.URI;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.lang3.StringUtils;

/**
 * Where the operator's language model is, and how it may be used.
 *
 * @param address of the chat completions: http or https, without credentials, query or fragment
 * @param name of the model there
 * @param key sent as a bearer token; empty where none is needed
 * @param timeout longest time for one reading
 * @param atOnce most readings at one time
 */
public record ModelSettings(
    URI address, String name, Optional<String> key, Duration timeout, int atOnce) {
  private static final String PATH = "/chat/completions";
  private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

  /** Names no value in a message: an address or a key may hold a secret. */
  public ModelSettings {
    boolean web = "http".equals(address.getScheme()) || "https".equals(address.getScheme());
    if (!web || address.getHost() == null) {
      throw new IllegalArgumentException("The address of a model begins with http:// or https://.");
    }
    if (address.getRawUserInfo() != null
        || address.getRawQuery() != null
        || address.getRawFragment() != null) {
      throw new IllegalArgumentException(
          "The address of a model holds no user, query or fragment; its key has a setting of its"
              + " own.");
    }
    if (StringUtils.isBlank(name)) {
      throw new IllegalArgumentException("A model has a name.");
    }
    if (!key.map(ModelSettings::isPlain).orElse(true)) {
      throw new IllegalArgumentException("The key of a model is plain text without spaces.");
    }
    if (timeout.isNegative() || timeout.isZero() || atOnce < 1) {
      throw new IllegalArgumentException("A model has time, and reads at least one post at once.");
    }
  }

  /**
   * Settings as an operator writes them.
   *
   * @param base such as {@code http://localhost:8000/v1}
   * @throws IllegalArgumentException saying what is wrong, without the values
   */
  public static ModelSettings of(
      String base, String name, Optional<String> key, Duration timeout, int atOnce) {
    URI address;
    try {
      address = URI.create(StringUtils.stripEnd(base.strip(), "/"));
    } catch (IllegalArgumentException unreadable) {
      throw new IllegalArgumentException("The address of a model cannot be read.");
    }
    ModelSettings checked = new ModelSettings(address, name, key, timeout, atOnce);
    return new ModelSettings(URI.create(address + PATH), checked.name, key, timeout, atOnce);
  }

  /** Whether posts would leave this machine unencrypted. */
  public boolean isOpenToReaders() {
    return "http".equals(address.getScheme()) && !THIS_MACHINE.contains(address.getHost());
  }

  private static boolean isPlain(String key) {
    return !key.isEmpty() && key.chars().allMatch(c -> c > ' ' && c < 127);
  }

  /** Without the key. */
  @Override
  public String toString() {
    return name + " at " + address.getHost();
  }
}
