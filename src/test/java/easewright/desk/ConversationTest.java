package easewright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ConversationTest {
  private static final String REPORTED =
      "{\"signs\":[{\"sign\":\"straps-dig-in\",\"seen\":\"present\",\"side\":\"left\"},"
          + "{\"sign\":\"band-digs-in\",\"seen\":\"present\"}],\"couldNotTell\":[\"straps-uneven\"]}";

  private static final Set<String> DANGERS = Set.of("fever");

  private static JsonNode request(String body) {
    return Conversation.request(FilledForm.of(body.getBytes(StandardCharsets.UTF_8)), DANGERS);
  }

  private static JsonNode json(String text) throws IOException {
    return new ObjectMapper().readTree(text);
  }

  @Test
  void a_sign_ticked_both_ways_counts_as_seen() throws IOException {
    assertEquals(
        json("[{\"sign\":\"band-digs-in\",\"seen\":\"present\"}]"),
        request("notSeen=band-digs-in&seen=band-digs-in&couldNotTell=band-digs-in").path("signs"));
  }

  @Test
  void checkboxes_decide_which_earlier_signs_still_count_and_their_side_stays() throws IOException {
    String earlier = "soFar=" + URLEncoder.encode(REPORTED, StandardCharsets.UTF_8);

    JsonNode request = request(earlier + "&signsShown=yes&seen=straps-dig-in");

    assertEquals(
        json("[{\"sign\":\"straps-dig-in\",\"seen\":\"present\",\"side\":\"left\"}]"),
        request.path("signs"));
    assertFalse(request.has("couldNotTell"));
  }

  @Test
  void a_sign_whose_checkbox_was_not_shown_stays_as_reported() throws IOException {
    String earlier = "soFar=" + URLEncoder.encode(REPORTED, StandardCharsets.UTF_8);

    assertEquals(json(REPORTED).path("signs"), request(earlier).path("signs"));
  }

  @Test
  void a_danger_stays_until_it_is_ticked_as_not_seen() throws IOException {
    String told = "{\"signs\":[{\"sign\":\"fever\",\"seen\":\"present\"}]}";
    String earlier = "signsShown=yes&soFar=" + URLEncoder.encode(told, StandardCharsets.UTF_8);

    assertEquals(json(told).path("signs"), request(earlier).path("signs"));
    assertEquals(
        json("[{\"sign\":\"fever\",\"seen\":\"absent\"}]"),
        request(earlier + "&notSeen=fever").path("signs"));
  }

  @Test
  void words_to_be_judged_stay_until_they_are_reported_as_judged() throws IOException {
    String told = "{\"readYourself\":[\"it went all funny\"]}";
    String earlier = "soFar=" + URLEncoder.encode(told, StandardCharsets.UTF_8);

    assertEquals(1, request(earlier).path("readYourself").size());
    assertEquals(0, request(earlier + "&judged=yes").path("readYourself").size());
  }

  @Test
  void details_of_a_ticked_sign_count_and_an_emptied_field_withdraws_the_report()
      throws IOException {
    String earlier = "soFar=" + URLEncoder.encode(REPORTED, StandardCharsets.UTF_8);

    JsonNode request =
        request(
            earlier
                + "&seen=straps-dig-in&straps-dig-in%2Fside=&straps-dig-in%2Fdegree=strong"
                + "&seen=band-digs-in&band-digs-in%2Famount=2&units=imperial"
                + "&notSeen=straps-slip-off&straps-slip-off%2Fdegree=slight");

    assertEquals(
        json(
            "[{\"sign\":\"straps-dig-in\",\"seen\":\"present\",\"degree\":\"strong\"},"
                + "{\"sign\":\"band-digs-in\",\"seen\":\"present\",\"amount\":\"2 in\"},"
                + "{\"sign\":\"straps-slip-off\",\"seen\":\"absent\"}]"),
        request.path("signs"));
  }

  @Test
  void a_sign_reported_in_two_places_stays_as_reported() throws IOException {
    String twice =
        "{\"signs\":[{\"sign\":\"band-pulls-off-the-body\",\"seen\":\"present\",\"place\":\"side\"},"
            + "{\"sign\":\"band-pulls-off-the-body\",\"seen\":\"present\",\"place\":\"back\"}]}";

    FilledForm next = Conversation.goingOn(FilledForm.blank(), json(twice), "");

    assertEquals(json(twice).path("signs"), Conversation.request(next, DANGERS).path("signs"));
  }

  @Test
  void continuing_puts_earlier_reports_into_the_checkboxes_and_empties_the_text()
      throws IOException {
    FilledForm form = FilledForm.of("text=hello&garment=quillmere-top".getBytes());

    FilledForm next = Conversation.goingOn(form, json(REPORTED), "straps-slip-off");

    assertEquals("", next.value("text"));
    assertEquals("quillmere-top", next.value("garment"));
    assertEquals(json(REPORTED).path("signs"), Conversation.request(next, DANGERS).path("signs"));
    assertEquals(
        json(REPORTED).path("couldNotTell"),
        Conversation.request(next, DANGERS).path("couldNotTell"));
  }

  @Test
  void a_change_reported_as_not_made_does_not_count_as_tried() throws IOException {
    String tried =
        "{\"earlier\":[{\"adjustment\":\"take-in-the-band\",\"outcome\":\"worse\"},"
            + "{\"adjustment\":\"move-the-straps-in\",\"outcome\":\"better\"}]}";
    String form = "soFar=" + URLEncoder.encode(tried, StandardCharsets.UTF_8);

    JsonNode request = request(form + "&notTried=take-in-the-band");

    assertEquals(
        json("[{\"adjustment\":\"move-the-straps-in\",\"outcome\":\"better\"}]"),
        request.path("earlier"));
  }

  @Test
  void pattern_and_size_come_from_one_field() throws IOException {
    assertEquals(
        json("{\"pattern\":{\"sheet\":\"quillmere-top\"},\"sizeCut\":\"75C\"}"),
        request("garment=quillmere-top%2F75C"));
  }

  @Test
  void a_checkbox_of_the_wearer_adds_to_earlier_reports_and_withdraws_only_what_it_showed()
      throws IOException {
    String told = "{\"circumstances\":{\"nursing\":true,\"impact\":\"high\"}}";
    String earlier = "soFar=" + URLEncoder.encode(told, StandardCharsets.UTF_8);
    String ribs = "&%2Fcircumstances%2FhurtRibs=yes";

    assertEquals(
        json("{\"nursing\":true,\"impact\":\"high\",\"hurtRibs\":true}"),
        request(earlier + ribs).path("circumstances"));
    assertEquals(
        json("{\"nursing\":false,\"impact\":\"high\",\"hurtRibs\":true}"),
        request(earlier + ribs + "&circumstancesShown=yes").path("circumstances"));
    assertEquals(
        List.of("yes"),
        Conversation.goingOn(FilledForm.blank(), json(told), "").values("/circumstances/nursing"));
  }
}
