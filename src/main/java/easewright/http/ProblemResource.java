package easewright.http;

import easewright.contract.ProblemKind;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Explains each problem type and its remedy; the {@code type} URI of a problem leads here. */
@Path("/problems/{kind}")
@NonBlocking
@Unchanging
public class ProblemResource {
  private final Map<String, ProblemKind> kinds =
      ProblemKind.all().stream().collect(Collectors.toMap(ProblemKind::kind, Function.identity()));

  @CheckedTemplate(basePath = "problems")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance page(ProblemKind kind);

    static native TemplateInstance plain(ProblemKind kind);
  }

  @GET
  @Produces("text/html;charset=UTF-8")
  public String page(@PathParam("kind") String kind) {
    return Pages.page(known(kind)).render();
  }

  @GET
  @Produces("text/plain;charset=UTF-8;qs=0.9")
  public String plain(@PathParam("kind") String kind) {
    return Pages.plain(known(kind)).render();
  }

  private ProblemKind known(String kind) {
    ProblemKind known = kinds.get(kind);
    if (known == null) {
      throw new NotFoundException();
    }
    return known;
  }
}
