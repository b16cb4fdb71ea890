package easewright.desk;

import easewright.saying.Problem;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** Shows a page to desk users where a program gets a problem (RFC 9457). */
class RefusalPage {
  private static final MediaType HTML = MediaType.valueOf(DeskResource.HTML);
  private static final int KEY_NEEDED = 401;

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance refusal(Problem problem);
  }

  @ServerResponseFilter
  void show(ContainerRequestContext request, ContainerResponseContext response) {
    String path = request.getUriInfo().getPath();
    if (!PageSafety.isOfDesk(path) || !(response.getEntity() instanceof Problem problem)) {
      return;
    }
    boolean read = request.getMethod().equals("GET");
    String page =
        problem.status() == KEY_NEEDED
            ? SignInPage.Pages.signIn(read ? path : "", false).render()
            : Pages.refusal(problem).render();
    response.getHeaders().remove(HttpHeaders.WWW_AUTHENTICATE);
    response.getHeaders().putSingle(HttpHeaders.CONTENT_TYPE, HTML);
    response.setEntity(page, null, HTML);
  }
}
