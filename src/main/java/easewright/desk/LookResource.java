package easewright.desk;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.jboss.resteasy.reactive.ResponseHeader;

/** The style sheet and the script of the desk's pages; their security policy allows no others. */
@Path("/desk")
@NonBlocking
public class LookResource {
  private static final String AN_HOUR = "public, max-age=3600";

  private final String script = script();

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance look();
  }

  @GET
  @Path("/look.css")
  @Produces("text/css;charset=UTF-8")
  @ResponseHeader(name = "Cache-Control", value = AN_HOUR)
  public String look() {
    return Pages.look().render();
  }

  @GET
  @Path("/desk.js")
  @Produces("text/javascript;charset=UTF-8")
  @ResponseHeader(name = "Cache-Control", value = AN_HOUR)
  public String desk() {
    return script;
  }

  private static String script() {
    try (InputStream stream = LookResource.class.getResourceAsStream("/easewright/desk.js")) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
