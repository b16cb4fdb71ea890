package easewright.api;

import easewright.diagnosis.Answer;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.ResponseHeader;

/** One try-on and its answer. Nothing is kept. */
@Path("/v1/fittings")
@Consumes(MediaType.APPLICATION_JSON)
@NonBlocking
public class FittingResource {
  private final InForce rules;

  FittingResource(InForce rules) {
    this.rules = rules;
  }

  @POST
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public Answer json(byte[] body) {
    return answer(body);
  }

  @POST
  @Produces("text/markdown;charset=UTF-8;qs=0.9")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String markdown(byte[] body) {
    return AnswerPages.post(answer(body)).render();
  }

  @POST
  @Produces("text/html;charset=UTF-8;qs=0.8")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String html(byte[] body) {
    return AnswerPages.card(answer(body)).render();
  }

  private Answer answer(byte[] body) {
    return rules.now().answer(RequestJson.parse(body));
  }
}
