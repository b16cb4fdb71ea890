package easewright.saying;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Serialises notes whose text comes from the rule book alone, such as the rule behind a finding.
 * Dozens of them make up half of an answer, so their JSON is generated once and then copied.
 *
 * @param <T> an immutable record without client data
 */
final class CachedJson<T> extends StdSerializer<T> {
  private static final long serialVersionUID = 1;

  /** More than a rule book has; in development, books are replaced often. */
  private static final int MOST = 5_000;

  private static final ObjectMapper PLAIN =
      new ObjectMapper().setSerializationInclusion(JsonInclude.Include.NON_NULL);

  private final transient Map<T, SerializedString> kept = new ConcurrentHashMap<>();

  CachedJson(Class<T> notes) {
    super(notes);
  }

  @Override
  public void serialize(T note, JsonGenerator json, SerializerProvider provider)
      throws IOException {
    SerializedString written = kept.get(note);
    if (written == null) {
      written = new SerializedString(PLAIN.writeValueAsString(note));
      if (kept.size() >= MOST) {
        kept.clear();
      }
      kept.put(note, written);
    }
    json.writeRawValue(written);
  }
}
