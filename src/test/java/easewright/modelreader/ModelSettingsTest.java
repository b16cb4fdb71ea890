package easewright.modelreader;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** That messages about settings hold no secret: OWASP Logging Cheat Sheet (from memory). */
class ModelSettingsTest {
  private static ModelSettings of(String address, String name, String key) {
    return ModelSettings.of(address, name, Optional.ofNullable(key), Duration.ofSeconds(1), 1);
  }

  @ParameterizedTest
  @CsvSource({
    "http://localhost:8000/v1, http://localhost:8000/v1/chat/completions, false",
    "http://localhost:8000/v1///, http://localhost:8000/v1/chat/completions, false",
    "' https://models.example/v1 ', https://models.example/v1/chat/completions, false",
    "http://[::1]:8000, http://[::1]:8000/chat/completions, false",
    "http://models.example/v1, http://models.example/v1/chat/completions, true",
  })
  void posts_go_to_the_chat_completions_of_the_address(String base, String full, boolean open) {
    ModelSettings settings = of(base, "small", null);
    assertEquals(full, settings.address().toString());
    assertEquals(open, settings.isOpenToReaders());
  }

  @ParameterizedTest
  @CsvSource({
    "ftp://zq7.example/v1, small, ",
    "file:///zq7, small, ",
    "zq7.example/v1, small, ",
    "/zq7, small, ",
    "'', small, ",
    "'http://zq7 .example', small, ",
    "http://zq7@models.example/v1, small, ",
    "http://models.example/v1?key=zq7, small, ",
    "http://models.example/v1#zq7, small, ",
    "http://zq7.example/v1, ' ', ",
    "http://zq7.example/v1, small, 'zq7 key'",
    "http://zq7.example/v1, small, ''",
    "http://zq7.example/v1, small, 'zq7ü'",
  })
  void what_cannot_be_used_is_refused_without_repeating_it(String base, String name, String key) {
    Exception refused = assertThrows(IllegalArgumentException.class, () -> of(base, name, key));
    assertFalse(refused.getMessage().contains("zq7"), refused.getMessage());
    assertEquals(null, refused.getCause());
  }

  @Test
  void a_key_with_a_line_break_is_refused() {
    assertThrows(
        IllegalArgumentException.class, () -> of("http://localhost", "small", "zq7\r\nHost: a"));
  }

  @Test
  void settings_as_text_hold_no_key() {
    assertEquals(
        "small at models.example", of("https://models.example/v1", "small", "zq7").toString());
  }

  @Test
  void a_model_needs_time_and_a_slot() {
    for (Duration time : new Duration[] {Duration.ZERO, Duration.ofSeconds(-1)}) {
      assertThrows(
          IllegalArgumentException.class,
          () -> ModelSettings.of("http://localhost", "small", Optional.empty(), time, 1));
    }
    assertThrows(
        IllegalArgumentException.class,
        () ->
            ModelSettings.of(
                "http://localhost", "small", Optional.empty(), Duration.ofSeconds(1), 0));
  }
}
