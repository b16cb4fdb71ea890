package easewright.desk;

import easewright.access.PublicAddress;
import easewright.clinic.ClinicStore;
import easewright.clinic.OpenLinks;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import org.jboss.resteasy.reactive.ResponseHeader;

/**
 * Who waits in a clinic, as a feed (Atom, RFC 4287). Feeds are often read by services of others, so
 * it holds nicknames and times only.
 */
@Path("/desk/feed/{link}")
@Blocking
public class FeedPage {
  private final ClinicStore store;
  private final PublicAddress address;

  FeedPage(ClinicStore store, PublicAddress address) {
    this.store = store;
    this.address = address;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance feed(OpenLinks.Feed feed, Instant updated, String site);
  }

  @GET
  @Path("/waiting.atom")
  @Produces("application/atom+xml;charset=UTF-8")
  @ResponseHeader(name = "X-Robots-Tag", value = "noindex")
  public String waiting(@PathParam("link") String link, UriInfo called) {
    OpenLinks.Feed feed = store.links().feed(link);
    Instant updated = feed.waiting().isEmpty() ? Instant.EPOCH : feed.waiting().get(0).changedAt();
    return Pages.feed(feed, updated, address.site(called.getBaseUri())).render();
  }
}
