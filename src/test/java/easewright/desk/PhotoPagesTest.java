package easewright.desk;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.answering.RoundReader;
import easewright.clinic.Caller;
import easewright.clinic.CasePhotos;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import easewright.clinic.Photo;
import easewright.photo.TestPictures;
import easewright.request.RequestJson;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Photos by a wearer's link and at the desk: nothing but pixels is kept (Exif 3.0 says what a file
 * can tell), and a file that is none is refused in plain words (OWASP File Upload Cheat Sheet).
 */
@QuarkusTest
class PhotoPagesTest {
  private static final byte[] ROUND =
      "{\"text\": \"The band rides up at the back.\"}".getBytes(ISO_8859_1);

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private Clinics.Opened opened;
  private Caller organiser;
  private String id;
  private String link;

  @BeforeEach
  void stock() {
    opened = store.clinics().open("Thursday sewing circle", "Odile", 90);
    organiser = store.keys().holder(opened.key().text()).orElseThrow();
    id = caseOf("Wrenna");
    link = store.keys().issueLink(organiser, id).text();
  }

  private String caseOf(String nickname) {
    return store.rounds().open(organiser, nickname, fittings.read(RequestJson.parse(ROUND))).id();
  }

  private Response send(byte[] file, String name, String alt) {
    return given()
        .redirects()
        .follow(false)
        .accept("text/html")
        .multiPart("photo", name, file, "image/jpeg")
        .multiPart("round", "1")
        .multiPart("alt", alt)
        .post("/desk/wearer/" + link + "/photos");
  }

  private List<Photo> photos() {
    return store.cases().story(organiser, id).photos();
  }

  @Test
  void a_wearers_photo_comes_to_the_helpers_without_the_place_it_was_taken_at() {
    Response kept = send(TestPictures.jpegWithPlace(300, 200, 6), "me.jpg", "Back");
    assertEquals(303, kept.statusCode());
    assertTrue(kept.header("Location").endsWith("/desk/wearer/" + link), kept.header("Location"));

    assertNotNull(store.cases().story(organiser, id).current().waitingSince());
    String page = "/desk/clinics/" + organiser.clinic() + "/cases/" + id;
    String address = page + "/photos/" + photos().get(0).id();
    given()
        .accept("text/html")
        .cookie("easewright-key", opened.key().text())
        .get(page)
        .then()
        .body(containsString("<img src=\"" + address + "/small\" alt=\"Back\" width=\"200\""));
    for (String copy : List.of("", "/small")) {
      Response photo = given().cookie("easewright-key", opened.key().text()).get(address + copy);
      assertEquals("image/jpeg", photo.contentType());
      String bytes = new String(photo.asByteArray(), ISO_8859_1);
      assertFalse(bytes.contains("Exif") || bytes.contains("Quillmere"), copy);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"<svg xmlns='http://www.w3.org/2000/svg'/>", "GIF89a", "%PDF-1.7", "MZ"})
  void what_is_no_photo_is_refused_in_plain_words_and_nothing_is_kept(String file) {
    send(file.getBytes(ISO_8859_1), "photo.jpg", "The <b>back</b>")
        .then()
        .statusCode(400)
        .body(containsString("This file is no photo that can be shown here."))
        .body(containsString("Send a JPEG or PNG"))
        .body(containsString("value=\"The &lt;b&gt;back"))
        .body(not(containsString("<b>back")));
    assertTrue(photos().isEmpty());
  }

  @Test
  void a_photo_is_described_and_there_is_room_for_some_only() {
    byte[] file = TestPictures.png(30, 20);
    send(file, "a.png", " ").then().statusCode(400).body(containsString("Write one line"));
    for (int i = 0; i < CasePhotos.MOST; i++) {
      assertEquals(303, send(file, "a.png", "Front").statusCode());
    }
    send(file, "a.png", "Front").then().statusCode(422).body(containsString("has 12 photos"));
    assertEquals(CasePhotos.MOST, photos().size());
  }

  @Test
  void a_photo_is_seen_by_nobody_but_those_of_its_case_and_removed_for_good() {
    String other = caseOf("Tamsel");
    String mine = store.photos().add(organiser, id, 1, "Back", TestPictures.clean(30, 20)).id();
    String theirs =
        store.photos().add(organiser, other, 1, "Front", TestPictures.clean(30, 20)).id();
    String here = "/desk/wearer/" + link + "/photos/";
    given().get(here + mine).then().statusCode(200);
    given().get(here + theirs).then().statusCode(404);
    given().get("/v1/wearer-links/" + link + "/photos/" + theirs).then().statusCode(404);
    given().redirects().follow(false).post(here + theirs + "/delete").then().statusCode(404);
    given().redirects().follow(false).post(here + mine + "/delete").then().statusCode(303);
    given().get(here + mine).then().statusCode(404);
    assertEquals(1, store.cases().story(organiser, other).photos().size());
  }

  /** RFC 7578: parts without a name, without an end, or with none at all. */
  @ParameterizedTest
  @ValueSource(strings = {"", "--b\r\n", "--b\r\nContent-Disposition: form-data\r\n\r\nx\r\n--b--"})
  void a_form_that_is_none_is_refused(String body) {
    int status =
        given()
            .header("Content-Type", "multipart/form-data; boundary=b")
            .body(body.getBytes(ISO_8859_1))
            .post("/v1/wearer-links/" + link + "/photos")
            .statusCode();
    assertEquals(400, status);
  }
}
