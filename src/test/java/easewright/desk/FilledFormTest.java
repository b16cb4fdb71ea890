package easewright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.ws.rs.BadRequestException;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Forms as browsers send them: WHATWG URL, section 5, application/x-www-form-urlencoded. */
class FilledFormTest {
  private static final List<Field> FIELDS =
      List.of(Field.length("/body/bust"), Field.width("/elastic/width"), Field.text("/size"));

  private static FilledForm sent(String body) {
    return FilledForm.of(body.getBytes(StandardCharsets.UTF_8));
  }

  private static JsonNode json(String text) throws IOException {
    return new ObjectMapper().readTree(text);
  }

  @Test
  void a_bare_number_gets_the_unit_ticked_and_a_written_unit_stays() throws IOException {
    assertEquals(
        json(
            "{'units':'imperial','body':{'bust':'34 1/4 in'},'elastic':{'width':'40 mm'}}"
                .replace('\'', '"')),
        sent("units=imperial&%2Fbody%2Fbust=34+1%2F4&%2Felastic%2Fwidth=40+mm")
            .put(FIELDS, List.of()));
  }

  @Test
  void two_readings_of_one_girth_become_a_list_and_a_blank_one_is_left_out() throws IOException {
    assertEquals(
        json("{\"body\":{\"bust\":[\"91 cm\",\"90 cm\"]}}"),
        sent("%2Fbody%2Fbust=91&%2Fbody%2Fbust=90&%2Fbody%2Fbust=&%2Fsize=")
            .put(FIELDS, List.of()));
  }

  @Test
  void a_field_the_page_does_not_have_is_not_put_into_the_request() throws IOException {
    assertEquals(json("{}"), sent("%2Fpattern%2Finline=x&a=b").put(FIELDS, List.of("/flag")));
  }

  @Property
  void any_text_comes_through_but_for_its_line_ends_and_edges(@ForAll String text) {
    String clean = text.replaceAll("[\\ud800-\\udfff]", "").replace("\r", "");
    FilledForm form =
        sent("text=" + URLEncoder.encode(clean.replace("\n", "\r\n"), StandardCharsets.UTF_8));

    assertEquals(clean.strip(), form.value("text"));
  }

  @Property
  void any_bytes_are_parsed_or_refused(@ForAll byte[] body) {
    try {
      FilledForm.of(body).put(FIELDS, List.of("/flag"));
    } catch (BadRequestException refused) {
      assertTrue(new String(body, StandardCharsets.UTF_8).contains("%"));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"text=%", "text=%4", "text=%zz", "%=a"})
  void a_broken_escape_is_refused(String body) {
    assertThrows(BadRequestException.class, () -> sent(body));
  }
}
