package easewright.request;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * JSON according to RFC 8259 is parsed, within limits; sections 4 and 9 allow rejecting the rest.
 */
class RequestJsonTest {
  private static Fault refused(String json) {
    FaultyRequest refusal =
        assertThrows(
            FaultyRequest.class, () -> RequestJson.parse(json.getBytes(StandardCharsets.UTF_8)));
    assertEquals(400, refusal.status());
    assertFalse(refusal.faults().get(0).problem().contains("jackson"));
    return refusal.faults().get(0);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "{",
        "{]",
        "{'a': 1}",
        "{\"a\": 01}",
        "{\"a\": NaN}",
        "{} {}",
        "// c\n{}",
        "\"\u0000\""
      })
  void what_is_not_json_is_refused(String text) {
    refused(text);
  }

  @Test
  void the_location_is_reported_but_not_the_text() {
    Fault fault = refused("{\n\"bust\": \"94 cm\"\n\"secret\": 1}");
    assertTrue(fault.problem().contains("line 3, column"), fault.problem());
    assertFalse(fault.problem().contains("secret"), fault.problem());
  }

  @Test
  void a_field_written_twice_is_refused() {
    assertTrue(refused("{\"a\": 1, \"a\": 2}").problem().contains("twice"));
  }

  /** openapi/versions.md: null is the same as leaving the field out. */
  @Test
  void a_field_that_is_null_is_left_out_and_a_null_in_a_list_stays() {
    String json = "{\"a\": null, \"b\": {\"c\": null, \"d\": 0}, \"e\": [null, {\"f\": null}]}";
    assertEquals(
        "{\"b\":{\"d\":0},\"e\":[null,{}]}",
        RequestJson.parse(json.getBytes(StandardCharsets.UTF_8)).toString());
    assertTrue(RequestJson.parse("null".getBytes(StandardCharsets.UTF_8)).isNull());
  }

  @Test
  void nesting_of_20_is_read_and_21_is_refused() {
    RequestJson.parse(("[".repeat(20) + "]".repeat(20)).getBytes(StandardCharsets.UTF_8));
    assertTrue(refused("[".repeat(21) + "]".repeat(21)).problem().contains("deep"));
    refused("[".repeat(100_000));
    refused("{\"a\":".repeat(40_000));
  }

  @Test
  void texts_names_and_numbers_beyond_their_bounds_are_refused() {
    RequestJson.parse(("\"" + "x".repeat(4000) + "\"").getBytes(StandardCharsets.UTF_8));
    refused("\"" + "x".repeat(4001) + "\"");
    refused("{\"" + "x".repeat(201) + "\": 1}");
    refused("1".repeat(31));
    refused("1e" + "9".repeat(40));
  }

  @Test
  void a_number_with_a_huge_exponent_is_refused_by_the_reader_without_being_expanded() {
    FaultyRequest refusal =
        assertThrows(
            FaultyRequest.class,
            () ->
                Names.reader()
                    .read(
                        RequestJson.parse(
                            "{\"making\": {\"seams\": 1e999999999}}"
                                .getBytes(StandardCharsets.UTF_8))));
    assertEquals("/making/seams", refusal.faults().get(0).pointer());
  }

  @Test
  void above_256_kilobytes_nothing_is_read() {
    byte[] most = new byte[256 * 1024];
    java.util.Arrays.fill(most, (byte) ' ');
    most[0] = '7';
    RequestJson.parse(most);
    assertThrows(RequestJson.TooLarge.class, () -> RequestJson.parse(new byte[256 * 1024 + 1]));
  }
}
