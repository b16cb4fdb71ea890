package easewright.http;

import easewright.answering.HandbookService;
import easewright.handbook.Illustration;
import easewright.saying.BadParameter;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jboss.resteasy.reactive.ResponseHeader;

/** Drawings of what is seen and of what is changed, on the garment of a pattern. */
@Path("/drawings")
@NonBlocking
@Unchanging
public class IllustrationResource {
  /** As answers write amounts: "20 mm", "1 1/8 in.". */
  private static final Pattern AMOUNT = Pattern.compile("[0-9][0-9 /.]{0,8}(?:mm|cm|in\\.?)");

  private final HandbookService handbook;

  IllustrationResource(HandbookService handbook) {
    this.handbook = handbook;
  }

  @CheckedTemplate(basePath = "rules")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance illustration(Illustration drawn, String amount);
  }

  @GET
  @Path("/signs/{sign}.svg")
  @Produces("image/svg+xml")
  @ResponseHeader(name = "Cache-Control", value = "public, max-age=86400")
  public String sign(
      @PathParam("sign") String sign,
      @QueryParam("family") String family,
      @QueryParam("sheet") String sheet) {
    return drawn(handbook.handbook().signDrawing(sign, family, sheet), null);
  }

  @GET
  @Path("/changes/{change}.svg")
  @Produces("image/svg+xml")
  @ResponseHeader(name = "Cache-Control", value = "public, max-age=86400")
  public String change(
      @PathParam("change") String change,
      @QueryParam("family") String family,
      @QueryParam("sheet") String sheet,
      @QueryParam("amount") String amount) {
    if (amount != null && !amount.isEmpty() && !AMOUNT.matcher(amount).matches()) {
      throw new BadParameter("amount", List.of("20 mm", "3/4 in"));
    }
    return drawn(
        handbook.handbook().changeDrawing(change, family, sheet),
        amount == null || amount.isEmpty() ? null : amount);
  }

  private static String drawn(Optional<Illustration> illustration, String amount) {
    return Pages.illustration(illustration.orElseThrow(NotFoundException::new), amount).render();
  }
}
