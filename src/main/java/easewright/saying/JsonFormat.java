package easewright.saying;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import easewright.diagnosis.Answer.LimitNote;
import easewright.diagnosis.Answer.RuleRef;
import easewright.measure.Rounded;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import java.io.IOException;

/** Serialises answers as JSON: absent values are omitted, numbers have four decimals. */
@Singleton
public class JsonFormat implements ObjectMapperCustomizer {
  private static final int DECIMALS = 4;

  @Override
  public void customize(ObjectMapper mapper) {
    mapper
        .setSerializationInclusion(JsonInclude.Include.NON_NULL)
        .registerModule(
            new SimpleModule()
                .addSerializer(double.class, new FourDecimals())
                .addSerializer(Double.class, new FourDecimals())
                .addSerializer(new CachedJson<>(RuleRef.class))
                .addSerializer(new CachedJson<>(LimitNote.class)));
  }

  /** Further digits would differ between machines and carry no meaning. */
  private static final class FourDecimals extends StdSerializer<Double> {
    private static final long serialVersionUID = 1;

    FourDecimals() {
      super(Double.class);
    }

    @Override
    public void serialize(Double value, JsonGenerator json, SerializerProvider provider)
        throws IOException {
      if (!Double.isFinite(value)) {
        throw new IllegalStateException("A number of the answer is not finite.");
      }
      json.writeNumber(Rounded.text(value, DECIMALS));
    }
  }
}
