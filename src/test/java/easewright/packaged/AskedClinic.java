package easewright.packaged;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** A clinic as its organiser's program sees it, and what the service acknowledged to it. */
final class AskedClinic {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int MOST_TRIES = 100;
  private static final Duration LONGEST = Duration.ofSeconds(20);

  private final HttpClient client = HttpClient.newHttpClient();
  private final String key;
  private final String path;
  private final List<String> posts = new ArrayList<>();
  private URI service;
  private String rounds;

  private AskedClinic(URI service, String key, String path) {
    this.service = service;
    this.key = key;
    this.path = path;
  }

  /** No clinic: requests without a key. */
  static AskedClinic nobodys(URI service) {
    return new AskedClinic(service, null, "/v1/clinics");
  }

  /** Opens one, with a case; a store that is not ready yet is waited for. */
  static AskedClinic open(URI service) throws IOException, InterruptedException {
    HttpResponse<String> answer = opening(service);
    for (int tries = 0; tries < MOST_TRIES && answer.statusCode() == 503; tries++) {
      Thread.sleep(200);
      answer = opening(service);
    }
    if (answer.statusCode() != 201) {
      throw new AssertionError("No clinic: " + answer.statusCode() + " " + answer.body());
    }
    JsonNode opened = JSON.readTree(answer.body());
    AskedClinic clinic =
        new AskedClinic(
            service,
            opened.at("/key/key").textValue(),
            "/v1/clinics/" + opened.at("/clinic/id").textValue());
    HttpResponse<String> made = clinic.send("/cases", "{\"nickname\": \"Wrenna\"}");
    clinic.rounds = "/cases/" + JSON.readTree(made.body()).path("id").textValue() + "/rounds";
    return clinic;
  }

  private static HttpResponse<String> opening(URI service)
      throws IOException, InterruptedException {
    return nobodys(service).send("", "{\"name\": \"Circle\", \"organiser\": \"Odile\"}");
  }

  /** The same clinic at another instance, or at the same after a start. */
  void at(URI other) {
    service = other;
  }

  /** Adds a round, remembers it if it was acknowledged, and gives the answer. */
  HttpResponse<String> add() throws IOException, InterruptedException {
    String post = "The band rides up at the back, time " + posts.size() + "." + System.nanoTime();
    HttpResponse<String> answer =
        send(rounds, JSON.createObjectNode().put("text", post).toString());
    if (answer.statusCode() == 201) {
      posts.add(post);
    }
    return answer;
  }

  /** Adds a photo to the first round (RFC 7578), and gives the answer. */
  HttpResponse<String> addPhoto(byte[] jpeg) throws IOException, InterruptedException {
    String part = "--part\r\nContent-Disposition: form-data; name=";
    String photo = part + "\"photo\"; filename=\"a.jpg\"\r\nContent-Type: image/jpeg\r\n\r\n";
    String rest =
        "\r\n" + part + "\"round\"\r\n\r\n1\r\n" + part + "\"alt\"\r\n\r\nBack\r\n--part--\r\n";
    HttpRequest request =
        HttpRequest.newBuilder(service.resolve(path + rounds.replace("/rounds", "/photos")))
            .header("Authorization", "Bearer " + key)
            .header("Content-Type", "multipart/form-data; boundary=part")
            .POST(
                BodyPublishers.concat(
                    BodyPublishers.ofString(photo),
                    BodyPublishers.ofByteArray(jpeg),
                    BodyPublishers.ofString(rest)))
            .build();
    return client.send(request, BodyHandlers.ofString());
  }

  /** How many rounds were acknowledged. */
  int acknowledged() {
    return posts.size();
  }

  /** Asks for the clinic itself. */
  HttpResponse<String> read() throws IOException, InterruptedException {
    return send("", null);
  }

  /** What was acknowledged and is not there. */
  List<String> lost() throws IOException, InterruptedException {
    HttpResponse<String> all = send("/export", null);
    if (all.statusCode() != 200) {
      throw new IllegalStateException(all.statusCode() + " " + all.body());
    }
    List<String> lost = new ArrayList<>(posts);
    for (JsonNode story : JSON.readTree(all.body()).path("cases")) {
      story.path("rounds").forEach(round -> lost.remove(round.path("post").textValue()));
    }
    return lost;
  }

  private HttpResponse<String> send(String below, String body)
      throws IOException, InterruptedException {
    return sendTo(path + below, body);
  }

  /** Any request to the service. */
  HttpResponse<String> sendTo(String address, String body)
      throws IOException, InterruptedException {
    HttpRequest.Builder request = HttpRequest.newBuilder(service.resolve(address)).timeout(LONGEST);
    if (key != null) {
      request.header("Authorization", "Bearer " + key);
    }
    if (body != null) {
      request.header("Content-Type", "application/json").POST(BodyPublishers.ofString(body));
    }
    return client.send(request.build(), BodyHandlers.ofString());
  }
}
