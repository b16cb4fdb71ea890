package easewright.http;

import easewright.access.NoFounding;
import easewright.access.NoKey;
import easewright.access.TooOften;
import easewright.clinic.LastKey;
import easewright.clinic.NotAllowed;
import easewright.clinic.NotHere;
import easewright.clinic.Overtaken;
import easewright.clinic.StoreAway;
import easewright.contract.Contract;
import easewright.deadline.DeadlinePassed;
import easewright.request.FaultyRequest;
import easewright.request.RequestJson;
import easewright.saying.BadParameter;
import easewright.saying.Problem;
import io.quarkus.logging.Log;
import jakarta.ws.rs.NotAcceptableException;
import jakarta.ws.rs.NotAllowedException;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.NotSupportedException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Maps every failure to a problem (RFC 9457) with its status from RFC 9110. */
class ProblemMapping {
  static final int RETRY_AFTER_SECONDS = 5;

  static final Problem KEY_NEEDED =
      Problem.of(
          "key-needed",
          "A key is needed",
          401,
          "Send a key that is in force in the Authorization header, after the word Bearer.");

  @ServerExceptionMapper
  Response noKey(NoKey request) {
    return response(KEY_NEEDED).header(HttpHeaders.WWW_AUTHENTICATE, "Bearer").build();
  }

  @ServerExceptionMapper
  Response noFounding(NoFounding request) {
    return response(
            Problem.of(
                "founding-key-needed",
                "Nobody may open a clinic here",
                403,
                "Whoever runs the service sets easewright.clinic.founding-key, and gives that word to"
                    + " those who may open clinics. Without it clinics are opened only on the machine"
                    + " itself, of a service that listens there alone."))
        .build();
  }

  @ServerExceptionMapper
  Response tooOften(TooOften request) {
    return response(Problem.TOO_MANY)
        .header(HttpHeaders.RETRY_AFTER, Math.max(1, request.secondsToWait()))
        .build();
  }

  @ServerExceptionMapper
  Response notAllowed(NotAllowed request) {
    return response(
            Problem.of(
                "not-allowed",
                "The key does not open this",
                403,
                "Ask the organiser of the clinic, who has a key to it."))
        .build();
  }

  @ServerExceptionMapper
  Response notHere(NotHere request) {
    return notFound((NotFoundException) null);
  }

  @ServerExceptionMapper
  Response overtaken(Overtaken request) {
    String holder =
        request.holder() == null ? "Nobody has it now." : request.holder() + " has it now.";
    return response(
            Problem.of(
                "overtaken",
                "Somebody was quicker",
                409,
                holder
                    + " Its version is "
                    + request.version()
                    + "; read it again before changing it."))
        .build();
  }

  @ServerExceptionMapper
  Response lastKey(LastKey request) {
    return response(
            Problem.of(
                "last-key",
                "The last key stays",
                409,
                "This is the last organiser's key; issue another before revoking it."))
        .build();
  }

  @ServerExceptionMapper
  Response faulty(FaultyRequest request) {
    return response(Problem.of(request)).build();
  }

  @ServerExceptionMapper
  Response badParameter(BadParameter request) {
    return response(Problem.of(request)).build();
  }

  @ServerExceptionMapper
  Response tooLarge(RequestJson.TooLarge request) {
    return tooLarge();
  }

  @ServerExceptionMapper
  Response tookTooLong(DeadlinePassed request) {
    return later(Problem.tookTooLong());
  }

  @ServerExceptionMapper
  Response storeAway(StoreAway request) {
    return later(Problem.storeAway());
  }

  private static Response later(Problem problem) {
    return response(problem).header(HttpHeaders.RETRY_AFTER, RETRY_AFTER_SECONDS).build();
  }

  @ServerExceptionMapper
  Response notFound(NotFoundException request) {
    return response(
            Problem.of("not-found", "Nothing is here", 404, "There is nothing at this address."))
        .build();
  }

  @ServerExceptionMapper
  Response notAllowed(NotAllowedException request, UriInfo address) {
    String allowed = String.join(", ", Contract.methods(address.getPath()));
    return response(
            Problem.of(
                "method", "The method does not apply", 405, "This address takes " + allowed + "."))
        .header(HttpHeaders.ALLOW, allowed)
        .build();
  }

  @ServerExceptionMapper
  Response notAcceptable(NotAcceptableException request) {
    return notAcceptable();
  }

  private static Response notAcceptable() {
    return response(
            Problem.notAcceptable("application/json, text/markdown, text/html or text/plain"))
        .build();
  }

  @ServerExceptionMapper
  Response notSupported(NotSupportedException request, UriInfo address) {
    List<String> taken = Contract.forms(address.getPath());
    return response(notSupported(taken))
        .header(HttpHeaders.ACCEPT, String.join(", ", taken))
        .build();
  }

  /** The problem for a request in an unsupported format. */
  static Problem notSupported(List<String> taken) {
    return Problem.of(
        "media-type",
        "The form of the request is not taken",
        415,
        "Send " + String.join(" or ", taken) + ".");
  }

  @ServerExceptionMapper
  Response other(WebApplicationException request) {
    int status = request.getResponse().getStatus();
    if (status == 406) {
      return notAcceptable();
    }
    if (status == 413) {
      return tooLarge();
    }
    return status >= 500
        ? failed(request)
        : response(
                Problem.of(
                    "refused", "The request is refused", status, "It can't be dealt with here."))
            .build();
  }

  @ServerExceptionMapper
  Response failed(Throwable failure) {
    Log.error("A request failed", failure);
    return response(Problem.failed()).build();
  }

  private static Response tooLarge() {
    return response(Problem.tooLarge()).build();
  }

  /** A problem as a response that must not be cached: faults can quote measurements. */
  private static Response.ResponseBuilder response(Problem problem) {
    return Response.status(problem.status())
        .type(Problem.MEDIA_TYPE)
        .header(HttpHeaders.CACHE_CONTROL, "no-store")
        .entity(problem);
  }
}
