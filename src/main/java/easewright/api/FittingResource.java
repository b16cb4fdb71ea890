package easewright.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import org.jboss.resteasy.reactive.ResponseHeader;

/** One try-on and its answer. Nothing is kept. */
@Path("/v1/fittings")
@Consumes(MediaType.APPLICATION_JSON)
@NonBlocking
public class FittingResource {
  private final InForce rules;
  private final PublicAddress address;

  FittingResource(InForce rules, PublicAddress address) {
    this.rules = rules;
    this.address = address;
  }

  @POST
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public Answer json(byte[] body, @QueryParam(ReplyLength.PARAMETER) String length) {
    ReplyLength.of(length, ReplyLength.LONG); // a slip is told in every form
    return answer(body);
  }

  @POST
  @Produces("text/markdown;charset=UTF-8;qs=0.9")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String markdown(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.LONG);
    return Replies.markdown(answer(body), asked, address.site(called.getBaseUri()));
  }

  @POST
  @Produces("text/html;charset=UTF-8;qs=0.8")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String html(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.LONG);
    return Replies.html(answer(body), asked, address.site(called.getBaseUri()));
  }

  @POST
  @Produces("text/plain;charset=UTF-8;qs=0.7")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String text(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.SHORT);
    return Replies.text(answer(body), asked, address.site(called.getBaseUri()));
  }

  /** The fitting as it was understood, for whoever only wants to know whether it can be read. */
  @POST
  @Path("/checks")
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public ObjectNode check(byte[] body) {
    JsonNode request = RequestJson.parse(body);
    return rules.inTime(() -> rules.now().check(request));
  }

  /** The answer, for callers within the service. */
  public Answer answer(byte[] body) {
    return rules.answer(RequestJson.parse(body));
  }

  /** The answer, however long it takes: nobody waits for one of a batch, and none may be lost. */
  public Answer answerUnhurried(byte[] body) {
    return rules.now().answer(RequestJson.parse(body));
  }

  /**
   * A long reply in Markdown.
   *
   * @param calledAs what stood before the path when the service was called; "" if that is not known
   */
  public String post(Answer answer, String calledAs) {
    return Replies.markdown(answer, ReplyLength.LONG, address.site(calledAs));
  }

  /** A long reply as plain text. */
  public String text(Answer answer, String calledAs) {
    return Replies.text(answer, ReplyLength.LONG, address.site(calledAs));
  }

  /** A short reply in Markdown. */
  public String shortPost(Answer answer, String calledAs) {
    return Replies.markdown(answer, ReplyLength.SHORT, address.site(calledAs));
  }

  /** A short reply as plain text. */
  public String shortText(Answer answer, String calledAs) {
    return Replies.text(answer, ReplyLength.SHORT, address.site(calledAs));
  }
}
