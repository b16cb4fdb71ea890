package easewright.desk;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MultivaluedMap;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Security headers of the desk's pages: a browser may load our style sheet, script and drawings and
 * post forms to us, but nothing else, whatever a pasted post contains (Content Security Policy
 * Level 3). Pages contain measurements, so they are not cached. The referrer is sent only to our
 * own site, so that forms name our origin.
 */
class PageSafety {
  static final String POLICY =
      "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self';"
          + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private static final String CSP = "Content-Security-Policy";

  static boolean isOfDesk(String path) {
    return path.equals("/desk") || path.startsWith("/desk/");
  }

  @ServerResponseFilter
  void guard(ContainerRequestContext request, ContainerResponseContext response) {
    String path = request.getUriInfo().getPath();
    if (!isOfDesk(path)) {
      return;
    }
    MultivaluedMap<String, Object> headers = response.getHeaders();
    if (!headers.containsKey(CSP)) {
      headers.putSingle(CSP, POLICY);
    }
    headers.putSingle("X-Content-Type-Options", "nosniff");
    headers.putSingle("Referrer-Policy", "same-origin");
    if (!headers.containsKey(HttpHeaders.CACHE_CONTROL)) {
      headers.putSingle(HttpHeaders.CACHE_CONTROL, "no-store");
    }
  }
}
