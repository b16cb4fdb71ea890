package easewright.modelreader;

import java.net.http.HttpClient;
import java.net.http.HttpClient.Redirect;
import java.net.http.HttpClient.Version;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;

/**
 * Sends one request to the operator's address. The address is fixed for the life of the service and
 * redirects are not followed, so that no request can choose where a post goes (OWASP API7:2023).
 */
final class ModelCall {
  /** What a model says of one post, with room for what it thinks aloud. */
  static final int MOST_BYTES = 256 * 1024;

  private static final int OK = 200;

  private final ModelSettings settings;
  private final HttpClient client;

  /** A call that brought no answer. */
  static final class Failed extends Exception {
    private static final long serialVersionUID = 1;
    private final ModelOutcome outcome;

    /** Keeps no cause: what went wrong elsewhere may repeat what was sent. */
    Failed(ModelOutcome outcome) {
      super(outcome.name());
      this.outcome = outcome;
    }

    ModelOutcome outcome() {
      return outcome;
    }
  }

  ModelCall(ModelSettings settings) {
    this.settings = settings;
    this.client =
        HttpClient.newBuilder()
            .version(Version.HTTP_1_1)
            .followRedirects(Redirect.NEVER)
            .connectTimeout(settings.timeout())
            .build();
  }

  /**
   * The body of the answer.
   *
   * @param most time until the whole answer must be here
   */
  byte[] send(byte[] json, Duration most) throws Failed {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(settings.address())
            .header("Content-Type", "application/json")
            .header("Accept", "application/json")
            .POST(BodyPublishers.ofByteArray(json));
    settings.key().ifPresent(key -> request.header("Authorization", "Bearer " + key));
    CompletableFuture<HttpResponse<byte[]>> coming =
        client.sendAsync(request.build(), head -> new BoundedBody(MOST_BYTES));
    try {
      HttpResponse<byte[]> answer = coming.get(most.toMillis(), TimeUnit.MILLISECONDS);
      if (answer.statusCode() != OK) {
        throw new Failed(ModelOutcome.REFUSED);
      }
      return answer.body();
    } catch (TimeoutException late) {
      throw new Failed(ModelOutcome.SLOW);
    } catch (ExecutionException broken) {
      throw new Failed(isTooLong(broken) ? ModelOutcome.HUGE : ModelOutcome.AWAY);
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
      throw new Failed(ModelOutcome.AWAY);
    } finally {
      coming.cancel(true); // closes the connection of an answer that is still on its way
    }
  }

  private static boolean isTooLong(Throwable broken) {
    return Stream.iterate(broken, one -> one != null, Throwable::getCause)
        .anyMatch(BoundedBody.TooLong.class::isInstance);
  }
}
