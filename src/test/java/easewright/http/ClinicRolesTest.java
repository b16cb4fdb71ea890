package easewright.http;

import static easewright.http.ContractSchemas.CONTRACT;
import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import easewright.photo.TestPictures;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Who may do what, for every operation of the contract: 401 without a valid key (RFC 6750, section
 * 3), 403 with the key of another role, and 404 from another clinic (RFC 9110, section 15.5.4
 * permits this to hide that something exists).
 */
@QuarkusTest
class ClinicRolesTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** The kinds of caller. */
  enum CallerKind {
    ANONYMOUS,
    NONSENSE,
    NEVER_ISSUED,
    REVOKED,
    STRANGER,
    WEARER,
    HELPER,
    ORGANISER
  }

  private static final Set<CallerKind> ANYBODY = EnumSet.allOf(CallerKind.class);
  private static final Set<CallerKind> HELPERS =
      EnumSet.of(CallerKind.HELPER, CallerKind.ORGANISER);
  private static final Set<CallerKind> ORGANISER = EnumSet.of(CallerKind.ORGANISER);
  private static final Set<CallerKind> WEARER = EnumSet.of(CallerKind.WEARER);

  private static final Map<String, Set<CallerKind>> MAY =
      Map.ofEntries(
          Map.entry("openClinic", ANYBODY),
          Map.entry("openSampleClinic", ANYBODY),
          Map.entry("readClinic", HELPERS),
          Map.entry("changeClinic", ORGANISER),
          Map.entry("deleteClinic", ORGANISER),
          Map.entry("exportClinic", ORGANISER),
          Map.entry("readVoice", HELPERS),
          Map.entry("changeVoice", HELPERS),
          Map.entry("readAudit", ORGANISER),
          Map.entry("listHelpers", HELPERS),
          Map.entry("listKeys", ORGANISER),
          Map.entry("issueKey", ORGANISER),
          Map.entry("revokeKey", ORGANISER),
          Map.entry("readQueue", HELPERS),
          Map.entry("readInsight", HELPERS),
          Map.entry("replyToMany", HELPERS),
          Map.entry("listCases", HELPERS),
          Map.entry("openCase", HELPERS),
          Map.entry("readCase", HELPERS),
          Map.entry("deleteCase", ORGANISER),
          Map.entry("exportCase", HELPERS),
          Map.entry("takeCase", HELPERS),
          Map.entry("handOverCase", HELPERS),
          Map.entry("closeCase", HELPERS),
          Map.entry("reopenCase", HELPERS),
          Map.entry("addRound", HELPERS),
          Map.entry("keepReply", HELPERS),
          Map.entry("withdrawReply", HELPERS),
          Map.entry("keepOutcome", HELPERS),
          Map.entry("writeNote", HELPERS),
          Map.entry("addPhoto", HELPERS),
          Map.entry("readPhoto", HELPERS),
          Map.entry("deletePhoto", HELPERS),
          Map.entry("addOwnPhoto", WEARER),
          Map.entry("readOwnPhoto", WEARER),
          Map.entry("deleteOwnPhoto", WEARER),
          Map.entry("issueWearerLink", HELPERS),
          Map.entry("readOwnCase", WEARER),
          Map.entry("deleteOwnCase", WEARER),
          Map.entry("addOwnRound", WEARER),
          Map.entry("keepOwnOutcome", WEARER),
          Map.entry("writeOwnNote", WEARER));

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private final ContractSchemas schemas = new ContractSchemas();

  /** An operation of the contract. */
  record Operation(String path, String method, JsonNode contract) {
    String id() {
      return contract.path("operationId").textValue();
    }

    boolean byLink() {
      return path.startsWith("/v1/wearer-links");
    }

    Map.Entry<String, JsonNode> success() {
      return contract.path("responses").properties().stream()
          .filter(response -> response.getKey().startsWith("2"))
          .findFirst()
          .orElseThrow();
    }

    @Override
    public String toString() {
      return id();
    }
  }

  static List<Operation> operations() {
    List<Operation> operations = new ArrayList<>();
    for (Map.Entry<String, JsonNode> path : CONTRACT.path("paths").properties()) {
      for (Map.Entry<String, JsonNode> method : path.getValue().properties()) {
        if (Examples.isOfClinics(path.getKey()) && !method.getKey().equals("parameters")) {
          operations.add(new Operation(path.getKey(), method.getKey(), method.getValue()));
        }
      }
    }
    return operations;
  }

  @Test
  void every_operation_of_the_contract_has_its_row() {
    Set<String> operations = new TreeSet<>(operations().stream().map(Operation::id).toList());
    assertEquals(operations, new TreeSet<>(MAY.keySet()));
  }

  @Test
  void every_endpoint_of_the_clinics_is_in_the_contract() throws ClassNotFoundException {
    Set<String> served = new TreeSet<>();
    for (var found : new ClassFileImporter().importPackages("easewright")) {
      if (!found.isAnnotatedWith(Path.class)) {
        continue;
      }
      Class<?> resource = Class.forName(found.getName());
      String root = resource.getAnnotation(Path.class).value();
      for (Method method : resource.getDeclaredMethods()) {
        for (var annotation : method.getAnnotations()) {
          HttpMethod http = annotation.annotationType().getAnnotation(HttpMethod.class);
          if (http != null && Examples.isOfClinics(root)) {
            Path below = method.getAnnotation(Path.class);
            served.add(http.value() + " " + root + (below == null ? "" : below.value()));
          }
        }
      }
    }
    Set<String> promised = new TreeSet<>();
    for (Operation one : operations()) {
      promised.add(one.method().toUpperCase(Locale.ROOT) + " " + one.path());
    }
    assertEquals(promised, served);
  }

  @ParameterizedTest
  @MethodSource("operations")
  void an_operation_is_allowed_only_for_the_roles_in_its_row(Operation operation)
      throws IOException {
    StockedClinic kept = StockedClinic.in(store, fittings);
    StockedClinic other = StockedClinic.in(store, fittings);
    for (CallerKind who : CallerKind.values()) {
      if (MAY.get(operation.id()).contains(who)) {
        admitted(operation, who, StockedClinic.in(store, fittings), other);
      } else {
        String before = kept.contents(store);
        Response response = call(operation, who, kept, other);
        assertRefused(operation, who, response);
        assertEquals(before, kept.contents(store), who + " changed something");
      }
    }
  }

  private void admitted(
      Operation operation, CallerKind who, StockedClinic clinic, StockedClinic other)
      throws IOException {
    Response response = call(operation, who, clinic, other);
    Map.Entry<String, JsonNode> promised = operation.success();
    assertEquals(
        promised.getKey(), "" + response.statusCode(), () -> who + ": " + response.asString());
    JsonNode schema = promised.getValue().at("/content/application~1json/schema");
    if (promised.getValue().at("/content").has("image/jpeg")) {
      assertServedAsPicture(response);
      return;
    }
    if (schema.isMissingNode()) {
      assertEquals("", response.asString());
      return;
    }
    assertEquals("no-store", response.header("Cache-Control"));
    JsonNode answer = JSON.readTree(response.asByteArray());
    if (schema.has("items")) {
      assertFalse(answer.isEmpty());
      for (JsonNode item : answer) {
        schemas.assertValid(name(schema.path("items")), item);
      }
    } else {
      schemas.assertValid(name(schema), answer);
    }
  }

  /**
   * A photo is shown and never run, whatever it is opened as (OWASP File Upload Cheat Sheet;
   * Content Security Policy Level 3, "sandbox").
   */
  private static void assertServedAsPicture(Response response) throws IOException {
    assertEquals("image/jpeg", response.contentType());
    assertEquals("nosniff", response.header("X-Content-Type-Options"));
    assertEquals("no-store", response.header("Cache-Control"));
    assertTrue(response.header("Content-Disposition").startsWith("inline; filename="));
    assertTrue(response.header("Content-Security-Policy").contains("default-src 'none'; sandbox"));
    assertNotNull(ImageIO.read(new ByteArrayInputStream(response.asByteArray())));
  }

  private static String name(JsonNode reference) {
    return reference.path("$ref").textValue().replace("#/components/schemas/", "");
  }

  private void assertRefused(Operation operation, CallerKind who, Response response)
      throws IOException {
    int status =
        operation.byLink() || who == CallerKind.STRANGER
            ? 404
            : who == CallerKind.WEARER || who == CallerKind.HELPER ? 403 : 401;
    assertEquals(status, response.statusCode(), () -> who + ": " + response.asString());
    assertTrue(operation.contract().path("responses").has("" + status));
    schemas.assertValid("Problem", JSON.readTree(response.asByteArray()));
    if (status == 401) {
      assertEquals("Bearer", response.header("WWW-Authenticate"));
    }
  }

  private static Response call(
      Operation operation, CallerKind who, StockedClinic clinic, StockedClinic other)
      throws IOException {
    String key =
        switch (who) {
          case ANONYMOUS -> null;
          case NONSENSE -> "open sesame";
          case NEVER_ISSUED -> "ewo-" + clinic.organiser().id() + "-" + "a".repeat(40);
          case REVOKED -> clinic.revoked().text();
          case STRANGER -> other.organiser().text();
          case WEARER -> clinic.link().text();
          case HELPER -> clinic.helper().text();
          case ORGANISER -> clinic.organiser().text();
        };
    RequestSpecification request = given();
    if (key != null && !operation.byLink()) {
      request.header("Authorization", "Bearer " + key);
    }
    if (operation.contract().at("/requestBody/content").has("multipart/form-data")) {
      request
          .multiPart("photo", "photo.jpg", TestPictures.jpeg(40, 30), "image/jpeg")
          .multiPart("round", "1")
          .multiPart("alt", "The left armhole");
    } else if (operation.contract().has("requestBody")) {
      request.contentType(ContentType.JSON).body(body(operation, clinic));
    }
    return request.request(
        operation.method().toUpperCase(Locale.ROOT),
        operation
            .path()
            .replace("{clinic}", clinic.id())
            .replace("{case}", clinic.open().id())
            .replace("{key}", clinic.helper().id())
            .replace("{photo}", clinic.photo())
            .replace("{number}", "1")
            .replace("{link}", key == null ? "none" : key));
  }

  /** The contract's own example, with the current version. */
  private static String body(Operation operation, StockedClinic clinic) throws IOException {
    JsonNode example =
        operation
            .contract()
            .at("/requestBody/content/application~1json/examples")
            .iterator()
            .next()
            .path("externalValue");
    JsonNode body =
        JSON.readTree(Files.readString(java.nio.file.Path.of("openapi", example.textValue())));
    new ContractSchemas()
        .assertValid(
            name(operation.contract().at("/requestBody/content/application~1json/schema")), body);
    if (body.has("version")) {
      boolean ofClinic = Set.of("changeClinic", "changeVoice").contains(operation.id());
      ((ObjectNode) body).put("version", ofClinic ? 1 : clinic.open().version());
    }
    if (body.path("cases").path(0) instanceof ObjectNode named) {
      named.put("case", clinic.open().id()).put("version", clinic.open().version());
    }
    return body.toString();
  }
}
