package easewright.saying;

import easewright.saying.InsightNotes.CountNote;
import easewright.saying.InsightNotes.FaultNote;
import easewright.saying.InsightNotes.GroupNote;
import easewright.saying.InsightNotes.InsightNote;
import easewright.saying.InsightNotes.ShareNote;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/** Insight as comma-separated values (RFC 4180), a count in each line. */
public final class InsightTable {
  private static final String[] HEAD = {
    "by", "group", "kind", "id", "name", "cases", "of", "share", "from", "to", "chance"
  };

  /** What a spreadsheet takes for the beginning of a formula. */
  private static final String FORMULA = "=+-@\t\r";

  private final StringBuilder text = new StringBuilder();

  private InsightTable() {}

  public static String of(InsightNote insight) {
    InsightTable table = new InsightTable();
    table.row((Object[]) HEAD);
    table.counts("all", "", "cause", insight.causes());
    table.counts("all", "", "sign", insight.signs());
    for (GroupNote group : insight.groups()) {
      table.counts(group.by(), group.name(), "cause", group.causes());
      table.counts(group.by(), group.name(), "sign", group.signs());
    }
    insight.faults().forEach(table::fault);
    return table.text.toString();
  }

  private void counts(String by, String group, String kind, List<CountNote> counts) {
    counts.forEach(one -> count(by, group, kind, one.id(), one.name(), one.cases(), null));
  }

  private void fault(FaultNote fault) {
    String where = fault.patternName() + " " + String.join(" ", fault.sizes());
    count(
        fault.by(),
        where,
        "common fault",
        fault.cause(),
        fault.causeName(),
        fault.inside(),
        fault.chance());
  }

  private void count(
      String by,
      String group,
      String kind,
      String id,
      String name,
      ShareNote cases,
      Double chance) {
    row(
        by,
        group,
        kind,
        id,
        name,
        cases.part(),
        cases.whole(),
        cases.share(),
        cases.from(),
        cases.to(),
        chance);
  }

  private void row(Object... values) {
    text.append(Arrays.stream(values).map(InsightTable::cell).collect(Collectors.joining(",")))
        .append("\r\n");
  }

  /** Names and sizes may come from anybody: none of them is to be computed where it is opened. */
  private static String cell(Object value) {
    String written = Objects.toString(value, "");
    if (value instanceof Number) {
      return written;
    }
    if (!written.isEmpty() && FORMULA.indexOf(written.charAt(0)) >= 0) {
      written = "'" + written;
    }
    return written.matches("[\\w .'-]*") ? written : '"' + written.replace("\"", "\"\"") + '"';
  }
}
