package easewright.http;

import easewright.access.PublicAddress;
import easewright.contract.Contract;
import easewright.contract.ContractPage;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;

/** The contract as a page, with a command to try each operation. */
@Path("/api")
@Unchanging
public class ContractPageResource {
  /** The address assumed if the service does not know its own. */
  private static final String USUAL = "http://localhost:8080";

  private final PublicAddress address;

  private static final class Kept {
    /** Built on first use, not at start-up. */
    static final ContractPage CONTRACT = ContractPage.of(Contract.tree());
  }

  ContractPageResource(PublicAddress address) {
    this.address = address;
  }

  @CheckedTemplate(basePath = "contract")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance page(ContractPage contract, String site);
  }

  @GET
  @Blocking
  @Produces("text/html;charset=UTF-8")
  public String page(@Context UriInfo called) {
    String known = address.site(called.getBaseUri().toString());
    return Pages.page(Kept.CONTRACT, known.isEmpty() ? USUAL : known).render();
  }
}
