package easewright.desk;

import easewright.saying.InsightNotes.AskedNote;
import easewright.saying.InsightNotes.GroupNote;
import easewright.saying.InsightNotes.InsightNote;
import jakarta.ws.rs.core.UriBuilder;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a page of insight looks at, and the addresses of what lies beside it. */
public record InsightFilter(AskedNote asked) {
  /** Whether it looks at some cases only. */
  public boolean closely() {
    return !given().isEmpty();
  }

  /** What was asked for, of a pattern, size, cloth or choice; null when any will do. */
  public String at(String by) {
    return given().get(by);
  }

  /** The same question as the end of an address, from "?"; "" when everything is looked at. */
  public String query() {
    return query(given());
  }

  /** The same with one more thing asked for. */
  public String closer(String by, String value) {
    Map<String, String> closer = given();
    closer.put(by, value);
    return query(closer);
  }

  /** Cases told apart by one kind of thing, those with the most cases first. */
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

  /** Values are cut sizes and names of anybody: nothing in them may be taken for more. */
  private static String query(Map<String, String> given) {
    UriBuilder address = UriBuilder.fromPath("");
    given.keySet().forEach(by -> address.queryParam(by, "{" + by + "}"));
    return address.buildFromMap(given).toString();
  }
}
