package easewright.http;

import easewright.answering.CheckService;
import easewright.check.ClothAnswer;
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

/** Checks what a cloth or an elastic is suitable for. Nothing is stored. */
@Path("/v1/cloth-checks")
@Consumes(MediaType.APPLICATION_JSON)
@NonBlocking
public class ClothCheckResource {
  private final CheckService checks;
  private final AnswerJson json;

  ClothCheckResource(CheckService checks, AnswerJson json) {
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
    return CheckPages.clothPost(answer(body)).render();
  }

  @POST
  @Produces("text/html;charset=UTF-8;qs=0.8")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String html(byte[] body) {
    return CheckPages.clothCard(answer(body)).render();
  }

  private ClothAnswer answer(byte[] body) {
    return checks.cloth(RequestJson.parse(body));
  }
}
