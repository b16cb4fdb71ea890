package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The sheets that were sent along with requests most recently, by name, so that the next request
 * can name one instead of sending it again. Kept in memory only; nobody can name a sheet that she
 * does not have.
 */
public final class SentSheets {
  /**
   * Characters of JSON in all, some hundred sheets; parsed, they take many times as much memory.
   */
  private static final int MOST_CHARACTERS = 1024 * 1024;

  private int characters;

  /** The latest used last. */
  private final Map<String, Sent> kept = new LinkedHashMap<>();

  /** A sheet as it was sent, and as it was read. */
  public record Sent(JsonNode json, PatternSheet sheet) {}

  SentSheets() {}

  /** The name of a sheet: "sha256:" and the hash of its JSON, hexadecimal. */
  public static String nameOf(JsonNode sheet) {
    try {
      byte[] text = sheet.toString().getBytes(StandardCharsets.UTF_8);
      return "sha256:"
          + HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text));
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("Every Java has SHA-256.", impossible);
    }
  }

  /** The sheet of this name, if it is still kept. */
  public synchronized Optional<Sent> find(String name) {
    Optional<Sent> found = Optional.ofNullable(kept.remove(name));
    found.ifPresent(sheet -> kept.put(name, sheet));
    return found;
  }

  synchronized void keep(String name, Sent sheet) {
    if (kept.put(name, sheet) == null) {
      characters += length(sheet);
    }
    while (characters > MOST_CHARACTERS) {
      characters -= length(kept.remove(kept.keySet().iterator().next()));
    }
  }

  private static int length(Sent sheet) {
    return sheet.json().toString().length();
  }
}
