package easewright.http;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.FittingService;
import easewright.diagnosis.Answer;
import easewright.request.RequestJson;
import easewright.saying.ReplyLength;
import easewright.saying.ReplyWriter;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import org.jboss.resteasy.reactive.ResponseHeader;

/** One fitting and its answer. Nothing is stored. */
@Path("/v1/fittings")
@Consumes(MediaType.APPLICATION_JSON)
@NonBlocking
public class FittingResource {
  private final FittingService fittings;
  private final ReplyWriter replies;

  FittingResource(FittingService fittings, ReplyWriter replies) {
    this.fittings = fittings;
    this.replies = replies;
  }

  @POST
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public Answer json(byte[] body, @QueryParam(ReplyLength.PARAMETER) String length) {
    ReplyLength.of(length, ReplyLength.LONG); // rejects a bad value in every format
    return answer(body);
  }

  @POST
  @Produces("text/markdown;charset=UTF-8;qs=0.9")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String markdown(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.LONG);
    return replies.markdown(answer(body), asked, called.getBaseUri().toString());
  }

  @POST
  @Produces("text/html;charset=UTF-8;qs=0.8")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String html(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.LONG);
    return replies.html(answer(body), asked, called.getBaseUri().toString());
  }

  @POST
  @Produces("text/plain;charset=UTF-8;qs=0.7")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String text(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.SHORT);
    return replies.text(answer(body), asked, called.getBaseUri().toString());
  }

  /** The fitting as parsed, for clients that only want to validate it. */
  @POST
  @Path("/checks")
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public ObjectNode check(byte[] body) {
    return fittings.check(RequestJson.parse(body));
  }

  private Answer answer(byte[] body) {
    return fittings.answer(RequestJson.parse(body));
  }
}
