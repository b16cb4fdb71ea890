package easewright.desk;

import easewright.saying.Problem;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Shows a page where a program gets a problem (RFC 9457): at the desk, and to a browser that has
 * followed a wrong address elsewhere.
 */
class RefusalPage {
  private static final MediaType HTML = MediaType.valueOf(DeskResource.HTML);
  private static final int KEY_NEEDED = 401;
  private static final int NOT_FOUND = 404;

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance refusal(Problem problem, String menu);
  }

  @ServerResponseFilter
  void show(ContainerRequestContext request, ContainerResponseContext response) {
    String path = request.getUriInfo().getPath();
    if (!(response.getEntity() instanceof Problem problem)
        || !PageSafety.isOfDesk(path) && !isLost(request, path, problem)) {
      return;
    }
    boolean read = request.getMethod().equals("GET");
    String page =
        problem.status() == KEY_NEEDED
            ? SignInPage.Pages.signIn(read ? path : "", false).render()
            : Pages.refusal(problem, isByLink(path) ? "wearer" : "").render();
    response.getHeaders().remove(HttpHeaders.WWW_AUTHENTICATE);
    response.getHeaders().putSingle(HttpHeaders.CONTENT_TYPE, HTML);
    response.getHeaders().putSingle("Content-Security-Policy", PageSafety.POLICY);
    response.setEntity(page, null, HTML);
  }

  private static boolean isByLink(String path) {
    return path.startsWith("/desk/wearer/") || path.startsWith("/desk/shared/");
  }

  /** Whether a browser asked for a page that is not there; what programs call stays theirs. */
  private static boolean isLost(ContainerRequestContext request, String path, Problem problem) {
    String accepted = request.getHeaderString(HttpHeaders.ACCEPT);
    return problem.status() == NOT_FOUND
        && request.getMethod().equals("GET")
        && !path.startsWith("/v1/")
        && accepted != null
        && accepted.startsWith(MediaType.TEXT_HTML);
  }
}
