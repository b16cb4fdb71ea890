package easewright.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.ext.Provider;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Lets clients ask whether what they have is still the same (RFC 9110, section 13.1.2). The tag is
 * a hash of the text itself, so that it holds across restarts and machines and cannot outlive a
 * change. It is weak, since the text may be compressed on its way.
 */
@Provider
@Unchanging
public class EntityTags implements ContainerResponseFilter {
  private static final String ANY = "*";
  private static final String WEAK = "W/";

  private final ObjectMapper json;

  EntityTags(ObjectMapper json) {
    this.json = json;
  }

  @Override
  public void filter(ContainerRequestContext request, ContainerResponseContext response) {
    if (response.getStatus() != Response.Status.OK.getStatusCode() || !response.hasEntity()) {
      return;
    }
    String text = text(response.getEntity());
    EntityTag tag = new EntityTag(DigestUtils.sha256Hex(text), true);
    MultivaluedMap<String, Object> headers = response.getHeaders();
    headers.putSingle(HttpHeaders.ETAG, WEAK + '"' + tag.getValue() + '"');
    headers.add(HttpHeaders.VARY, HttpHeaders.ACCEPT);
    if (!headers.containsKey(HttpHeaders.CACHE_CONTROL)) {
      headers.putSingle(HttpHeaders.CACHE_CONTROL, "no-cache");
    }
    if (isKnown(request, tag)) {
      response.setStatus(Response.Status.NOT_MODIFIED.getStatusCode());
      response.setEntity(null);
    } else {
      response.setEntity(text);
    }
  }

  private String text(Object entity) {
    try {
      return entity instanceof String text ? text : json.writeValueAsString(entity);
    } catch (JsonProcessingException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** Weak comparison: whether the client's tag was weak does not matter. */
  private static boolean isKnown(ContainerRequestContext request, EntityTag tag) {
    List<String> sent = request.getHeaders().getOrDefault(HttpHeaders.IF_NONE_MATCH, List.of());
    return sent.stream()
        .flatMap(line -> List.of(line.split(",", -1)).stream())
        .map(String::strip)
        .map(one -> one.startsWith(WEAK) ? one.substring(WEAK.length()) : one)
        .anyMatch(one -> one.equals(ANY) || one.equals('"' + tag.getValue() + '"'));
  }
}
