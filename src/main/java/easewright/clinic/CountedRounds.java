package easewright.clinic;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jdbi.v3.core.Handle;

/** Reads the data for insight: some fields of each round, never its fitting or its answer. */
final class CountedRounds {
  /** Maximum number of rounds read, from the cases changed last; limits memory and time. */
  static final int MOST_ROUNDS = 20_000;

  private CountedRounds() {}

  /**
   * The result.
   *
   * @param complete whether all cases were read
   */
  record Read(List<CountedRound> cases, boolean complete) {}

  private record Row(String caseId, Case.Gist gist, Seen seen) {}

  static Read of(Handle handle, String clinic) {
    List<Row> rows = rows(handle, clinic);
    boolean complete = rows.size() <= MOST_ROUNDS;
    Map<String, List<Row>> byCase = new LinkedHashMap<>();
    for (Row row : complete ? rows : rows.subList(0, MOST_ROUNDS)) {
      byCase.computeIfAbsent(row.caseId(), id -> new ArrayList<>()).add(row);
    }
    return new Read(byCase.values().stream().map(CountedRounds::sighting).toList(), complete);
  }

  private static List<Row> rows(Handle handle, String clinic) {
    return handle
        .createQuery(
            "select r.case_id, r.red_flag, r.cause, r.sign, r.sheet, r.size_cut, r.signs,"
                + " r.choices, r.cloth from rounds r join cases c on c.id = r.case_id"
                + " where c.clinic_id = :clinic order by c.changed_ms desc, c.id, r.no desc"
                + " limit :most")
        .bind("clinic", clinic)
        .bind("most", MOST_ROUNDS + 1)
        .map(
            (row, context) ->
                new Row(
                    row.getString("case_id"),
                    new Case.Gist(
                        row.getBoolean("red_flag"),
                        row.getString("cause"),
                        row.getString("sign"),
                        row.getString("sheet"),
                        row.getString("size_cut")),
                    Seen.ofRow(
                        row.getString("signs"), row.getString("choices"), row.getString("cloth"))))
        .list();
  }

  /** From the rounds of a case, newest first. */
  private static CountedRound sighting(List<Row> rounds) {
    List<Row> plain = rounds.stream().filter(round -> !round.gist().redFlag()).toList();
    boolean redFlag = plain.size() < rounds.size();
    if (plain.isEmpty()) {
      return new CountedRound(redFlag, false, null, null, null, null, Map.of(), List.of());
    }
    Row counted =
        plain.stream()
            .filter(round -> round.gist().cause() != null)
            .findFirst()
            .orElse(plain.get(0));
    Set<String> signs = new LinkedHashSet<>();
    plain.forEach(round -> signs.addAll(round.seen().signs()));
    return new CountedRound(
        redFlag,
        true,
        counted.gist().sheet(),
        counted.gist().sizeCut(),
        counted.gist().cause(),
        counted.seen().cloth(),
        counted.seen().choices(),
        List.copyOf(signs));
  }
}
