package easewright.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.FittingService;
import easewright.diagnosis.Answer;
import easewright.request.RequestJson;
import easewright.request.TextWithoutAnswer;
import easewright.saying.AnswerJson;
import easewright.saying.Detail;
import easewright.saying.ReplyLength;
import easewright.saying.ReplyWriter;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.common.annotation.NonBlocking;
import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.function.Function;
import org.jboss.resteasy.reactive.ResponseHeader;

/**
 * One fitting and its answer, on the event loop unless it holds a text, which takes longer to read.
 * Nothing is stored.
 */
@Path("/v1/fittings")
@Consumes(MediaType.APPLICATION_JSON)
@NonBlocking
public class FittingResource {
  private final FittingService fittings;
  private final ReplyWriter replies;
  private final AnswerJson json;

  FittingResource(FittingService fittings, ReplyWriter replies, AnswerJson json) {
    this.fittings = fittings;
    this.replies = replies;
    this.json = json;
  }

  @POST
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public Uni<byte[]> json(
      byte[] body,
      @QueryParam(ReplyLength.PARAMETER) String length,
      @QueryParam(Detail.PARAMETER) String detail) {
    ReplyLength.of(length, ReplyLength.LONG); // rejects a bad value in every format
    Detail asked = Detail.of(detail);
    return answer(RequestJson.parse(body), asked).map(answer -> json.bytes(answer, asked));
  }

  @POST
  @Produces("text/markdown;charset=UTF-8;qs=0.9")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public Uni<String> markdown(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.LONG);
    String site = called.getBaseUri().toString();
    return said(body, answer -> replies.markdown(answer, asked, site), replies::markdown);
  }

  @POST
  @Produces("text/html;charset=UTF-8;qs=0.8")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public Uni<String> html(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.LONG);
    String site = called.getBaseUri().toString();
    return said(body, answer -> replies.html(answer, asked, site), replies::html);
  }

  @POST
  @Produces("text/plain;charset=UTF-8;qs=0.7")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public Uni<String> text(
      byte[] body, @QueryParam(ReplyLength.PARAMETER) String length, UriInfo called) {
    ReplyLength asked = ReplyLength.of(length, ReplyLength.SHORT);
    String site = called.getBaseUri().toString();
    return said(body, answer -> replies.text(answer, asked, site), replies::text);
  }

  /** The fitting as parsed, for clients that only want to validate it. */
  @POST
  @Blocking
  @Path("/checks")
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public ObjectNode check(byte[] body) {
    return fittings.check(RequestJson.parse(body));
  }

  /** A text that is no fit question gets a reply too, since somebody waits for one. */
  private Uni<String> said(
      byte[] body, Function<Answer, String> answered, Function<List<String>, String> aside) {
    JsonNode request = RequestJson.parse(body);
    return answer(request, Detail.FULL)
        .map(answered)
        .onFailure(TextWithoutAnswer.class)
        .recoverWithItem(text -> aside.apply(fittings.aside((TextWithoutAnswer) text, request)));
  }

  private Uni<Answer> answer(JsonNode request, Detail detail) {
    return request.has("text")
        ? Uni.createFrom()
            .item(() -> fittings.answer(request, detail))
            .runSubscriptionOn(Infrastructure.getDefaultWorkerPool())
        : Uni.createFrom().item(fittings.answer(request, detail));
  }
}
