package easewright.diagnosis.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class FrequencyTest {

  @Test
  void theWordsAreSpelledAsRulesSpellThem() {
    assertEquals(
        List.of("nearly-always", "usually", "often", "sometimes", "rarely"),
        Stream.of(Frequency.values()).map(Frequency::id).toList());
  }
}
