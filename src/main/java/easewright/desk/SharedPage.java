package easewright.desk;

import easewright.clinic.ClinicStore;
import easewright.clinic.OpenLinks;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;

/** One reply, through a link that ends by itself. Nothing else of its case is shown. */
@Path("/desk/shared/{link}")
@Produces(DeskResource.HTML)
@Blocking
public class SharedPage {
  private final ClinicStore store;

  SharedPage(ClinicStore store) {
    this.store = store;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance shared(OpenLinks.Shared shared);
  }

  @GET
  public String page(@PathParam("link") String link) {
    return Pages.shared(store.links().shared(link)).render();
  }
}
