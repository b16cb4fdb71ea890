package easewright.saying;

import easewright.saying.InsightNotes.CountNote;
import easewright.saying.InsightNotes.FaultNote;
import easewright.saying.InsightNotes.GroupNote;
import easewright.saying.InsightNotes.InsightNote;
import easewright.saying.InsightNotes.ShareNote;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Insight as comma-separated values (RFC 4180), one count per line. */
public final class InsightTable {
  private static final String[] HEAD = {
    "by", "group", "kind", "id", "name", "cases", "of", "share", "from", "to", "chance"
  };

  /** Characters that start a formula in a spreadsheet. */
  private static final String FORMULA = "=+-@\t\r";

  private static final CSVFormat FORM = CSVFormat.RFC4180.builder().setHeader(HEAD).get();

  private final CSVPrinter table;

  private InsightTable(CSVPrinter table) {
    this.table = table;
  }

  /** The table of an insight. */
  public static String of(InsightNote insight) {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(text, FORM)) {
      InsightTable table = new InsightTable(printer);
      table.counts("all", "", "cause", insight.causes());
      table.counts("all", "", "sign", insight.signs());
      for (GroupNote group : insight.groups()) {
        table.counts(group.by(), group.name(), "cause", group.causes());
        table.counts(group.by(), group.name(), "sign", group.signs());
      }
      for (FaultNote fault : insight.faults()) {
        table.fault(fault);
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible); // writes to memory only
    }
    return text.toString();
  }

  private void counts(String by, String group, String kind, List<CountNote> counts)
      throws IOException {
    for (CountNote one : counts) {
      count(by, group, kind, one.id(), one.name(), one.cases(), null);
    }
  }

  private void fault(FaultNote fault) throws IOException {
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
      String by, String group, String kind, String id, String name, ShareNote cases, Double chance)
      throws IOException {
    table.printRecord(
        harmless(by),
        harmless(group),
        kind,
        id,
        harmless(name),
        cases.part(),
        cases.whole(),
        cases.share(),
        cases.from(),
        cases.to(),
        chance);
  }

  /** Names and sizes are untrusted: prevents a spreadsheet from evaluating them as formulas. */
  private static String harmless(String text) {
    return !text.isEmpty() && FORMULA.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }
}
