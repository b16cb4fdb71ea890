package easewright.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.clinic.Key;
import easewright.fuzz.Endpoints.Endpoint;
import easewright.photo.TestPictures;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A good request to each endpoint: the contract's example, or a form that any button may read. */
public final class Seeds {
  private static final JsonNode CONTRACT = Endpoints.contract().path("paths");
  private static final String JSON_EXAMPLES = "/application~1json/examples";

  /** Where a request may be YAML, its examples in JSON are of faults. */
  private static final String YAML = "application/yaml";

  private static final String YAML_EXAMPLES = "/application~1yaml/examples";

  /** Reads JSON too, which is YAML (YAML 1.2.2, section 1.2). */
  private static final ObjectMapper READER = new YAMLMapper();

  private static final String FORM = "application/x-www-form-urlencoded";
  private static final String BOUNDARY = "seam-of-two-parts";

  private final KeptClinic clinic;

  public Seeds(KeptClinic clinic) {
    this.clinic = clinic;
  }

  /** The path with its parameters filled in. */
  public String path(Endpoint endpoint) {
    String path = endpoint.path();
    for (Map.Entry<String, String> name : clinic.names(path).entrySet()) {
      path = path.replace("{" + name.getKey() + "}", name.getValue());
    }
    if (path.contains("{")) {
      throw new AssertionError("Nobody says what the parameters are to be: " + endpoint);
    }
    return path;
  }

  /** What a browser or a program sends along, the organiser's key too. */
  public Map<String, String> headers(Endpoint endpoint) {
    Map<String, String> headers = new LinkedHashMap<>();
    headers.put("Host", "localhost");
    if (endpoint.isOfDesk()) {
      headers.put("Accept", "text/html,*/*;q=0.8");
      headers.put("Cookie", "easewright-key=" + clinic.organiser().text());
    } else {
      headers.put("Accept", "*/*");
      headers.put("Authorization", "Bearer " + clinic.organiser().text());
    }
    if (endpoint.takesPhoto()) {
      headers.put("Content-Type", "multipart/form-data; boundary=" + BOUNDARY);
    } else if (endpoint.isForm()) {
      headers.put("Content-Type", FORM);
    } else if (!body(endpoint).isMissingNode()) {
      headers.put("Content-Type", "application/json");
    }
    return headers;
  }

  /** The example the contract gives for a request, current in its versions; missing if none. */
  public JsonNode body(Endpoint endpoint) {
    JsonNode forms =
        CONTRACT
            .path(endpoint.path())
            .path(endpoint.method().toLowerCase(Locale.ROOT))
            .at("/requestBody/content");
    JsonNode examples = forms.at(forms.has(YAML) ? YAML_EXAMPLES : JSON_EXAMPLES);
    if (examples.isEmpty()) {
      return MissingNode.getInstance();
    }
    JsonNode body = read(examples.iterator().next().path("externalValue").textValue());
    if (body.has("version")) {
      ((ObjectNode) body).put("version", version(endpoint));
    }
    if (body.path("cases").path(0) instanceof ObjectNode named) {
      named.put("case", clinic.caseId()).put("version", clinic.version(false));
    }
    return body;
  }

  /** The version that a change names: of the clinic, of its voice, or of the case. */
  private int version(Endpoint endpoint) {
    if (endpoint.path().endsWith("/voice")) {
      return clinic.versionOfVoice();
    }
    return clinic.version(
        endpoint.path().equals("/v1/clinics/{clinic}") || endpoint.path().contains("/organise/"));
  }

  private static JsonNode read(String example) {
    try {
      return READER.readTree(Files.readString(Path.of("openapi", example)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Fields of a form, sent by the organiser from a page of ours. */
  public Map<String, List<String>> form(Endpoint endpoint) {
    return form(endpoint, clinic.organiser());
  }

  /** The same sent by the holder of some key. */
  public Map<String, List<String>> form(Endpoint endpoint, Key sender) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    fields.put("token", List.of(KeptClinic.token(sender)));
    fields.put("text", List.of("The straps slip off."));
    fields.put("/text", List.of("The straps slip off."));
    fields.put("/name", List.of("Thursday sewing circle"));
    fields.put("/organiser", List.of("Odile"));
    fields.put("/role", List.of("helper"));
    fields.put("/retentionDays", List.of("120"));
    fields.put("/nickname", List.of("Ivolde"));
    fields.put("/outcome", List.of("better"));
    fields.put("/said", List.of("It sits."));
    fields.put("/body/bust", List.of("94 cm"));
    fields.put("/body/underbust", List.of("77 cm"));
    fields.put("/cloth/main/around/marked", List.of("10 cm"));
    fields.put("/cloth/main/around/stretched", List.of("17.5 cm"));
    fields.put("/cloth/main/around/relaxed", List.of("10.3 cm"));
    fields.put("/pattern/sheet", List.of("quillmere-top"));
    fields.put("/size", List.of("75C"));
    fields.put("/choices/straps", List.of("sliders"));
    for (String layer : List.of("main", "lining", "support")) {
      fields.put("/cloths/" + layer + "/width", List.of("150 cm"));
      fields.put("/cloths/" + layer + "/stretch", List.of("crosswise"));
    }
    fields.put("garment", List.of("quillmere-top"));
    fields.put("number", List.of("1"));
    fields.put("case", List.of(clinic.caseId() + ":" + clinic.version(false)));
    fields.put("keep", List.of("yes"));
    fields.put("sure", List.of("yes"));
    fields.put("units", List.of("metric"));
    fields.put("to", List.of("/desk"));
    fields.put("soFar", List.of("{\"signs\": [{\"sign\": \"band-rides-up-at-the-back\"}]}"));
    boolean ofClinic = endpoint.path().contains("/organise/");
    fields.put("/version", List.of("" + version(endpoint)));
    fields.put("round", List.of("1"));
    fields.put("alt", List.of("left armhole"));
    fields.put("key", List.of(ofClinic ? clinic.helper().id() : clinic.organiser().text()));
    return fields;
  }

  /** The whole request; null for a body where nothing is sent. */
  public RawRequest request(Endpoint endpoint) {
    return new RawRequest(endpoint.method(), path(endpoint), headers(endpoint), whole(endpoint));
  }

  private byte[] whole(Endpoint endpoint) {
    if (endpoint.takesPhoto()) {
      return parts(form(endpoint), TestPictures.jpeg(40, 30));
    }
    if (endpoint.isForm()) {
      return Hostile.encoded(form(endpoint));
    }
    JsonNode body = body(endpoint);
    return body.isMissingNode() ? null : body.toString().getBytes(UTF_8);
  }

  /** A form of several parts (RFC 7578). */
  private static byte[] parts(Map<String, List<String>> fields, byte[] photo) {
    ByteArrayOutputStream sent = new ByteArrayOutputStream();
    String part = "--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"%s\"%s\r\n\r\n";
    fields.forEach(
        (name, values) ->
            sent.writeBytes((part.formatted(name, "") + values.get(0) + "\r\n").getBytes(UTF_8)));
    String file = "; filename=\"a.jpg\"\r\nContent-Type: image/jpeg";
    sent.writeBytes(part.formatted("photo", file).getBytes(UTF_8));
    sent.writeBytes(photo);
    sent.writeBytes(("\r\n--" + BOUNDARY + "--\r\n").getBytes(UTF_8));
    return sent.toByteArray();
  }
}
