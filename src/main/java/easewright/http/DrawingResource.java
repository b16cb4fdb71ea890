package easewright.http;

import easewright.answering.HandbookService;
import easewright.handbook.GarmentDrawing.Marked;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import org.jboss.resteasy.reactive.ResponseHeader;

/** The garment's drawing with the place of a change marked, as a link target for replies. */
@Path("/drawings/{place}.svg")
@NonBlocking
@Unchanging
public class DrawingResource {
  private final HandbookService handbooks;

  DrawingResource(HandbookService handbooks) {
    this.handbooks = handbooks;
  }

  @CheckedTemplate(basePath = "rules")
  static final class Drawings {
    private Drawings() {}

    static native TemplateInstance marked(Marked marked);
  }

  @GET
  @Produces("image/svg+xml")
  @ResponseHeader(name = "Cache-Control", value = "public, max-age=86400")
  public String marked(@PathParam("place") String place, @QueryParam("family") String family) {
    return handbooks
        .handbook()
        .garment(family)
        .flatMap(drawn -> drawn.marking(place))
        .map(Drawings::marked)
        .orElseThrow(NotFoundException::new)
        .render();
  }
}
