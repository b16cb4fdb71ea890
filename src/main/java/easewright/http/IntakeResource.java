package easewright.http;

import easewright.answering.FittingService;
import easewright.request.IntakeAnswer;
import easewright.request.RequestJson;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.nio.charset.StandardCharsets;
import org.jboss.resteasy.reactive.ResponseHeader;

/** Reads a post in plain words, on a worker thread since that takes a while. Nothing is stored. */
@Path("/v1/intakes")
@Produces(MediaType.APPLICATION_JSON)
@Blocking
public class IntakeResource {
  private final FittingService fittings;

  IntakeResource(FittingService fittings) {
    this.fittings = fittings;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public IntakeAnswer json(byte[] body) {
    return fittings.read(RequestJson.parse(body));
  }

  @POST
  @Consumes(MediaType.TEXT_PLAIN)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public IntakeAnswer text(byte[] body) {
    if (body.length > RequestJson.MOST_BYTES) {
      throw new RequestJson.TooLarge();
    }
    return fittings.readText(new String(body, StandardCharsets.UTF_8));
  }
}
