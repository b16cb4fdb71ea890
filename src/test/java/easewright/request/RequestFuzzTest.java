package easewright.request;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.databind.JsonNode;
import easewright.fitting.Fitting;
import easewright.fuzz.LinearTime;
import easewright.http.Examples;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * Any bytes are either parsed as a fitting or rejected with faults. The request to continue from is
 * the same fitting.
 */
class RequestFuzzTest {
  private static final FittingReader READER = Names.reader();

  @FuzzTest(maxDuration = "4m")
  void any_bytes(byte[] body) {
    readOrRefused(body);
  }

  @Property(tries = 2000)
  void an_example_with_some_bytes_changed(@ForAll("examples") byte[] example, @ForAll long seed) {
    byte[] body = example.clone();
    Random random = new Random(seed);
    for (int change = random.nextInt(4); change >= 0; change--) {
      int from = random.nextInt(body.length);
      int to = random.nextInt(body.length);
      int length = Math.min(random.nextInt(12), body.length - Math.max(from, to));
      System.arraycopy(example, from, body, to, length);
    }
    readOrRefused(body);
  }

  private static void readOrRefused(byte[] body) {
    ReadOrRefused.check(
        () -> {
          try {
            JsonNode json = RequestJson.parse(body);
            Fitting fitting = READER.read(json);
            assertEquals(fitting, READER.read(SoFar.of(json, fitting)));
          } catch (RequestJson.TooLarge refused) {
            // as it may be
          }
        });
    // Repeated, it is a list too long to be read, which is rejected as a whole.
    String item = new String(body, StandardCharsets.UTF_8) + ",";
    LinearTime.check(item, RequestJson.MOST_BYTES / 4, RequestFuzzTest::asSigns);
  }

  private static void asSigns(String items) {
    try {
      READER.read(
          RequestJson.parse(("{\"signs\": [" + items + "{}]}").getBytes(StandardCharsets.UTF_8)));
    } catch (FaultyRequest | RequestJson.TooLarge refused) {
      // as it may be
    }
  }

  @Provide
  Arbitrary<byte[]> examples() throws IOException {
    List<byte[]> examples =
        Examples.requests("/v1/fittings").stream()
            .map(example -> example.toString().getBytes(StandardCharsets.UTF_8))
            .toList();
    return Arbitraries.of(examples);
  }
}
