package easewright.http;

import easewright.answering.CheckService;
import easewright.check.SizeAnswer;
import easewright.request.RequestJson;
import easewright.saying.AnswerJson;
import easewright.saying.CheckPages;
import easewright.saying.Detail;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.ResponseHeader;

/** Which size to cut, checked before cutting. Nothing is stored. */
@Path("/v1/size-checks")
@Consumes(MediaType.APPLICATION_JSON)
@NonBlocking
public class SizeCheckResource {
  private final CheckService checks;
  private final AnswerJson json;

  SizeCheckResource(CheckService checks, AnswerJson json) {
    this.checks = checks;
    this.json = json;
  }

  @POST
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public byte[] json(byte[] body, @QueryParam(Detail.PARAMETER) String detail) {
    Detail asked = Detail.of(detail);
    return json.bytes(answer(body), asked);
  }

  @POST
  @Produces("text/markdown;charset=UTF-8;qs=0.9")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String markdown(byte[] body) {
    return CheckPages.sizePost(answer(body)).render();
  }

  @POST
  @Produces("text/html;charset=UTF-8;qs=0.8")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String html(byte[] body) {
    return CheckPages.sizeCard(answer(body)).render();
  }

  private SizeAnswer answer(byte[] body) {
    return checks.size(RequestJson.parse(body));
  }
}
