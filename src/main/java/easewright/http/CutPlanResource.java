package easewright.http;

import easewright.answering.CutPlanService;
import easewright.plan.CutPlan;
import easewright.request.RequestJson;
import easewright.saying.AnswerJson;
import easewright.saying.CutPlanPages;
import easewright.saying.Detail;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.ResponseHeader;

/** What to cut and to buy. Runs on a worker thread, since the layout search is slow. */
@Path("/v1/cut-plans")
@Consumes(MediaType.APPLICATION_JSON)
public class CutPlanResource {
  private final CutPlanService plans;
  private final AnswerJson json;

  CutPlanResource(CutPlanService plans, AnswerJson json) {
    this.plans = plans;
    this.json = json;
  }

  @POST
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public byte[] json(byte[] body, @QueryParam(Detail.PARAMETER) String detail) {
    Detail asked = Detail.of(detail);
    return json.bytes(plan(body), asked);
  }

  @POST
  @Produces("text/markdown;charset=UTF-8;qs=0.9")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String markdown(byte[] body) {
    return CutPlanPages.list(plan(body)).render();
  }

  @POST
  @Produces("text/html;charset=UTF-8;qs=0.8")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String html(byte[] body) {
    return CutPlanPages.sheet(plan(body)).render();
  }

  private CutPlan plan(byte[] body) {
    return plans.plan(RequestJson.parse(body));
  }
}
