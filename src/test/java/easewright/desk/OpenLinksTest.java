package easewright.desk;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.answering.RoundReader;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import easewright.clinic.NotAllowed;
import easewright.clinic.NotHere;
import easewright.clinic.OpenLinks;
import easewright.clinic.Role;
import easewright.request.RequestJson;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** Links without a key: a feed (RFC 4287, the Atom format) and one shared reply. */
@QuarkusTest
class OpenLinksTest {
  private static final String ATOM = "http://www.w3.org/2005/Atom";
  private static final String ROUND =
      "{\"body\": {\"bust\": \"94 cm\"}, \"text\": \"The band rides up at the back.\"}";

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private Clinics.Opened opened;
  private Caller organiser;
  private String id;

  @BeforeEach
  void stock() {
    opened = store.clinics().open("Thursday <sewing> & circle", "Odile", 90);
    organiser = store.keys().holder(opened.key().text()).orElseThrow();
    id =
        store
            .rounds()
            .open(
                organiser,
                "Wrenna",
                fittings.read(RequestJson.parse(ROUND.getBytes(StandardCharsets.UTF_8))))
            .id();
  }

  private void reply(String text) {
    int version = store.cases().story(organiser, id).current().version();
    store.rounds().reply(organiser, id, 1, version, text);
  }

  private static Document atom(String link) throws Exception {
    Response response = given().get("/desk/feed/" + link + "/waiting.atom");
    assertEquals(200, response.statusCode());
    assertTrue(response.contentType().startsWith("application/atom+xml"), response.contentType());
    assertEquals("no-store", response.header("Cache-Control"));
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    return factory.newDocumentBuilder().parse(new ByteArrayInputStream(response.asByteArray()));
  }

  /** RFC 4287, sections 4.1.1 and 4.1.2: exactly one id, title and updated each, and an author. */
  @Test
  void who_waits_is_in_the_feed_without_a_word_of_what_was_written() throws Exception {
    Document feed = atom(store.links().issueFeed(organiser));
    assertEquals(ATOM, feed.getDocumentElement().getNamespaceURI());
    NodeList entries = feed.getElementsByTagNameNS(ATOM, "entry");
    assertEquals(1, entries.getLength());
    for (String element : new String[] {"id", "title", "updated"}) {
      assertEquals(2, feed.getElementsByTagNameNS(ATOM, element).getLength(), element);
    }
    assertEquals(1, feed.getElementsByTagNameNS(ATOM, "author").getLength());
    String all = feed.getDocumentElement().getTextContent();
    assertTrue(all.contains("Wrenna is waiting") && all.contains("Thursday <sewing> & circle"));
    String said = all.replaceAll("urn:\\S+|\\S+Z\\s", ""); // ids and times may hold any digits
    assertFalse(said.contains("rides up") || said.contains("94"), said);
    Instant.parse(feed.getElementsByTagNameNS(ATOM, "updated").item(1).getTextContent());

    reply("Take it in.");
    Document answered = atom(store.links().issueFeed(organiser));
    assertEquals(0, answered.getElementsByTagNameNS(ATOM, "entry").getLength());
  }

  @Test
  void a_renewed_feed_ends_the_one_before_and_organisers_alone_make_it() {
    String first = store.links().issueFeed(organiser);
    String second = store.links().issueFeed(organiser);
    given().get("/desk/feed/" + first + "/waiting.atom").then().statusCode(404);
    given().get("/desk/feed/" + second + "/waiting.atom").then().statusCode(200);
    given().get("/desk/shared/" + second).then().statusCode(404);
    given().get("/desk/feed/none/waiting.atom").then().statusCode(404);
    Caller helper =
        store
            .keys()
            .holder(store.keys().issue(organiser, Role.HELPER, "Perrin").text())
            .orElseThrow();
    assertThrows(NotAllowed.class, () -> store.links().issueFeed(helper));
  }

  @Test
  void a_shared_reply_shows_nothing_else_of_its_case() {
    assertThrows(NotHere.class, () -> store.links().share(organiser, id, 1));
    reply("Take the <band> in by 20 mm.");
    String link = store.links().share(organiser, id, 1);
    given()
        .accept("text/html")
        .get("/desk/shared/" + link)
        .then()
        .statusCode(200)
        .header("Cache-Control", "no-store")
        .body(containsString("Take the &lt;band&gt; in by 20 mm."))
        .body(not(containsString("Wrenna")))
        .body(not(containsString("rides up")))
        .body(not(containsString("94")))
        .body(not(containsString(id)));
    given().get("/desk/feed/" + link + "/waiting.atom").then().statusCode(404);
  }

  @Test
  void a_shared_reply_ends_by_time_by_hand_and_with_the_reply() {
    reply("Take it in.");
    String link = store.links().share(organiser, id, 1);
    OpenLinks later =
        store
            .by(Clock.offset(Clock.systemUTC(), OpenLinks.SHARED_FOR.minus(Duration.ofMinutes(1))))
            .links();
    assertEquals("Take it in.", later.shared(link).reply().text());
    OpenLinks after =
        store
            .by(Clock.offset(Clock.systemUTC(), OpenLinks.SHARED_FOR.plus(Duration.ofMinutes(1))))
            .links();
    assertThrows(NotHere.class, () -> after.shared(link));
    store.links().endShares(organiser, id);
    given().accept("text/html").get("/desk/shared/" + link).then().statusCode(404);
    String second = store.links().share(organiser, id, 1);
    int version = store.cases().story(organiser, id).current().version();
    store.rounds().withdrawReply(organiser, id, 1, version);
    assertThrows(NotHere.class, () -> store.links().shared(second));
  }
}
