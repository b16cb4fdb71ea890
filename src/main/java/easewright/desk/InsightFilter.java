package easewright.desk;

import easewright.saying.InsightNotes.AskedNote;
import easewright.saying.InsightNotes.GroupNote;
import easewright.saying.InsightNotes.InsightNote;
import jakarta.ws.rs.core.UriBuilder;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The filter of an insight page, and the links to related filters. */
public record InsightFilter(AskedNote asked) {
  /** Whether it selects only some cases. */
  public boolean closely() {
    return !given().isEmpty();
  }

  /** The value selected of a pattern, size, cloth or choice; null for any. */
  public String at(String by) {
    return given().get(by);
  }

  /** The filter as a query string with "?"; "" without a filter. */
  public String query() {
    return query(given());
  }

  /** The same with one more value selected. */
  public String closer(String by, String value) {
    Map<String, String> closer = given();
    closer.put(by, value);
    return query(closer);
  }

  /** Groups of one kind, largest first. */
  public List<GroupNote> groups(InsightNote insight, String by) {
    return insight.groups().stream()
        .filter(group -> group.by().equals(by))
        .sorted(Comparator.comparing(group -> -group.cases()))
        .toList();
  }

  private Map<String, String> given() {
    Map<String, String> given = new LinkedHashMap<>();
    given.put("pattern", asked.pattern());
    given.put("size", asked.size());
    given.put("cloth", asked.cloth());
    given.put("choice", asked.choice());
    given.values().removeIf(value -> value == null);
    return given;
  }

  /** Values are untrusted sizes and names, so they must be encoded. */
  private static String query(Map<String, String> given) {
    UriBuilder address = UriBuilder.fromPath("");
    given.keySet().forEach(by -> address.queryParam(by, "{" + by + "}"));
    return address.buildFromMap(given).toString();
  }
}
