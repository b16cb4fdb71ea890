package easewright.saying;

import com.fasterxml.jackson.annotation.JsonInclude;
import easewright.clinic.StoreAway;
import easewright.deadline.DeadlinePassed;
import easewright.request.FaultyRequest;
import easewright.request.RequestJson;
import java.util.List;

/**
 * A problem response (RFC 9457, "Problem Details for HTTP APIs").
 *
 * @param type the kind of problem, a relative URI
 * @param title the kind in words, the same for every occurrence
 * @param status the HTTP status
 * @param detail what is wrong in this occurrence
 * @param line the line of a bulk request that it answers, from 1; otherwise null
 * @param faults all faults in the request's body; empty if there are none
 */
public record Problem(
    String type,
    String title,
    int status,
    String detail,
    Integer line,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<FaultNote> faults) {

  /** RFC 9457, section 3. */
  public static final String MEDIA_TYPE = "application/problem+json";

  /** A rate limit was exceeded. */
  public static final Problem TOO_MANY =
      of(
          "too-many",
          "Too many requests from one place",
          429,
          "Wait as long as the header Retry-After says. Nothing of the request was kept.");

  /** One fault: JSON Pointer (RFC 6901), its line in a sheet, what is wrong, how to fix it. */
  public record FaultNote(String pointer, Integer line, String problem, String remedy) {}

  /** A problem not caused by the request's body. */
  public static Problem of(String kind, String title, int status, String detail) {
    return new Problem("/problems/" + kind, title, status, detail, null, List.of());
  }

  /** The problem for a request above a size limit, such as "256 KB". */
  public static Problem tooLarge(String most) {
    return of("too-large", "The request is too large", 413, "Send at most " + most + ".");
  }

  /** The problem for a request that accepts none of the available formats. */
  public static Problem notAcceptable(String forms) {
    return of(
        "not-acceptable",
        "No accepted form can be given",
        406,
        "Ask for " + forms + ", as the contract lists them.");
  }

  /** The same problem for one line of a bulk request. */
  public Problem atLine(int number) {
    return new Problem(type, title, status, detail, number, faults);
  }

  /**
   * The problem for a request that was read but failed: because of its faults, its size, or the
   * service.
   */
  public static Problem of(RuntimeException refusal) {
    if (refusal instanceof FaultyRequest request) {
      return of(request);
    }
    if (refusal instanceof DeadlinePassed) {
      return tookTooLong();
    }
    if (refusal instanceof StoreAway) {
      return storeAway();
    }
    if (refusal instanceof BadParameter parameter) {
      return of(parameter);
    }
    return refusal instanceof RequestJson.TooLarge ? tooLarge() : failed();
  }

  /** The problem for a query parameter with a value that it does not take. */
  public static Problem of(BadParameter request) {
    List<String> written =
        request.taken().stream().map(value -> request.name() + "=" + value).toList();
    return of(
        "parameter",
        "A parameter can't be read",
        400,
        "The parameter \"%s\" takes no such value. Write %s, or leave it out."
            .formatted(request.name(), String.join(" or ", written)));
  }

  /** The problem for an answer that timed out. */
  public static Problem tookTooLong() {
    return of(
        "took-too-long",
        "The answer took too long",
        503,
        "The work on this request was given up, since it took longer than one answer may.");
  }

  /** The problem for a clinic whose store is unavailable. */
  public static Problem storeAway() {
    return of(
        "store-away",
        "The clinics can't be reached",
        503,
        "The store of the clinics can't be used now. Nothing of this request was kept.");
  }

  /** The problem for a request above the size limit of a single fitting. */
  public static Problem tooLarge() {
    return tooLarge(RequestJson.MOST_BYTES / 1024 + " KB");
  }

  /** The problem for a server error. */
  public static Problem failed() {
    return of(
        "failed", "The service failed", 500, "The fault is the service's, not the request's.");
  }

  /** The problem for a request with faults. */
  public static Problem of(FaultyRequest request) {
    boolean unreadable = request.status() == 400;
    int more = request.count() - request.faults().size();
    return new Problem(
        unreadable ? "/problems/unreadable" : "/problems/impossible",
        unreadable ? "The request can't be read" : "The request can't be so",
        request.status(),
        (request.count() == 1 ? "There is one fault." : "There are %d faults.")
                .formatted(request.count())
            + (more == 0 ? "" : " The first " + request.faults().size() + " are listed."),
        null,
        request.faults().stream()
            .map(
                fault ->
                    new FaultNote(
                        fault.pointer(),
                        fault.line().orElse(null),
                        fault.problem(),
                        fault.remedy()))
            .toList());
  }
}
