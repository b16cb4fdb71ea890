package easewright.http;

import easewright.answering.RuleBookService;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.pattern.SheetFaults;
import easewright.request.Fault;
import easewright.request.Faults;
import easewright.request.RequestJson;
import easewright.saying.SheetSummary;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.nio.charset.StandardCharsets;
import java.util.function.Function;

/** Checks a pattern sheet. Nothing is stored. */
@Path("/v1/pattern-sheets/checks")
@Produces(MediaType.APPLICATION_JSON)
@Blocking
public class SheetCheckResource {
  private final PatternSheets sheets;
  private final RuleBookService rules;

  SheetCheckResource(PatternSheets sheets, RuleBookService rules) {
    this.sheets = sheets;
    this.rules = rules;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  public SheetSummary json(byte[] body) {
    return rules.inTime(() -> summary(body, sheets::readJson));
  }

  @POST
  @Consumes({"application/yaml", "text/yaml"})
  public SheetSummary yaml(byte[] body) {
    return rules.inTime(() -> summary(body, sheets::readYaml));
  }

  private static SheetSummary summary(byte[] body, Function<String, PatternSheet> reading) {
    if (body.length > RequestJson.MOST_BYTES) {
      throw new RequestJson.TooLarge();
    }
    try {
      return SheetSummary.of(reading.apply(new String(body, StandardCharsets.UTF_8)));
    } catch (SheetFaults found) {
      Faults faults = new Faults();
      Fault.Kind kind = found.readable() ? Fault.Kind.IMPOSSIBLE : Fault.Kind.UNREADABLE;
      found
          .faults()
          .forEach(
              f -> faults.add(new Fault(f.pointer(), f.problem(), f.remedy(), kind, f.line())));
      faults.refuse();
      throw found; // a sheet is never rejected without a fault
    }
  }
}
