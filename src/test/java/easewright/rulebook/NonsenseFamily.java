package easewright.rulebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** A second family of garments for tests: one folder beside the book's, of names without sense. */
public final class NonsenseFamily {
  public static final String ID = "flumpet";

  /** Its own measurements, of names without sense. */
  private static final String MEASURES =
      """
      measurements:
      - id: quorbleGirth
        name: quorble girth
        as: girth
        halves: {quorbleLeft: left quorble, quorbleRight: right quorble}
        least: 400 mm
        most: 1600 mm
        leastSurveyed: 500 mm
        usual: 800 mm
        how: Hold the tape level over the quorble.
        say: [quorble girth, round the quorble]
        source: from memory
      - id: blimLength
        name: blim
        as: short
        least: 100 mm
        most: 900 mm
        usual: 300 mm
        say: [blim, blim length]
        source: from memory
      comparisons:
      - id: quorble-over-blim
        first: quorbleGirth
        second: blimLength
        as: ratio
        low: 2
        high: 3
        slipWhenLow: a blim too slack
        slipWhenHigh: a blim too taut
        source: from memory
      orders:
      - larger: quorbleGirth
        smaller: blimLength
        field: blimLength
        kind: impossible
        problem: The blim of {smaller} is not below the quorble of {larger}.
        remedy: Swap them.
        source: from memory
      held:
      - id: loose
        field: tape
        of: [quorbleGirth, quorbleLeft, quorbleRight]
        adds: 10 mm
        varies: 5 mm
        again: true
        says: with a loose tape
        source: from memory
      garment:
      - id: finishedQuorble
        name: finished quorble
        least: least-girth-of-a-garment
        most: most-girth-of-a-garment
      figures:
      - id: quorble-strain
        of: body/quorbleGirth
        over: garment/finishedQuorble
        says: "quorble {of} over finished quorble {other}, less 1 = {value}"
      - id: blim-excess
        of: garment/finishedQuorble
        less: body/blimLength
        says: "finished quorble {of}, less blim {other} = {value}"
      missing:
      - body: [quorbleGirth]
        first: true
        says: the quorble girth was not given
        changes: It tells a slack quorble from a taut one.
      - body: [blimLength]
        once: [quorbleGirth]
        says: the blim was not given
        changes: It tells where the quorble ends.
      - garment: [finishedQuorble]
        says: the finished quorble was not measured
        changes: It tells what was sewn.
      """;

  private static final String CATALOG = "catalog/%s/quorble.yaml";
  private static final String SIGN =
      """
      - id: %1$s
        name: %2$s
        ask: Is it so that the %2$s?
        check: Look at the quorble.
        where: [all-over]
        look: [standing]
        degrees: {slight: a little, clear: much, strong: without end}
        effort: glance
        withoutFault: hardly ever
        source: from memory
        phrases: [%3$s]
        isNot: A quorble at rest.
      """;
  private static final String CAUSE =
      """
      - id: quorble-too-%1$s
        name: quorble too %1$s
        says: The quorble is too %1$s.
        area: making
        stage: making
        prior: common
        priorWhy: It is nonsense.
        priorSource: judgement
        lookAlikes: [quorble-too-%2$s]
        source: from memory
      """;
  private static final String RULE =
      """
      rule "quorble too %1$s: in any fitting"
        @summary("A quorble that is too %1$s moves.")
        @source("from memory")
        @since("2026-11")
      when
        in any fitting
      then
        "quorble too %1$s" nearly always shows as "%2$s"
        "requorble the flumpet" %3$s cures "quorble too %1$s"
      end
      """;
  private static final String PAGE =
      """
      # Quorble too %1$s

      Nonsense, to see that a family is answered by its own rules.

      ## It is seen

      ```yaml speaks
      given:
        signs: [{sign: %2$s, seen: present}]
      then:
        first cause: quorble-too-%1$s
        advises: requorble-the-flumpet
      ```

      ## It is not seen

      ```yaml silent
      with each: [{signs: [{sign: %2$s, seen: absent}]}]
      then:
        lowers: quorble-too-%1$s
      ```

      ## Seeing it says something

      ```yaml speaks
      with each: [%2$s]
      then:
        raises: quorble-too-%1$s
      ```
      """;

  private static final String FINDING =
      """
      rule "quorble strained by measure: it is"
        @summary("A strained quorble.")
        @source("from memory")
        @since("2026-11")
      when
        the "quorble strain" is at least "quorble strained"
      then
        it is found that "quorble strained by measure"
      end

      rule "quorble strained by measure: it is not"
        @summary("A quorble at rest.")
        @source("from memory")
        @since("2026-11")
      when
        the "quorble strain" is below "quorble strained"
      then
        it is found not so that "quorble strained by measure"
      end
      """;
  private static final String FINDING_PAGE =
      """
      # Quorble strained by measure

      The body is set beside the garment.

      ## It is strained

      ```yaml speaks
      given:
        family: flumpet
        body: {quorbleGirth: 80 cm}
        garment: {finishedQuorble: 60 cm}
      then:
        holds: quorble-strained-by-measure
        first cause: quorble-too-taut
      ```

      ## It is not

      ```yaml silent
      given:
        family: flumpet
        body: {quorbleGirth: 80 cm}
        garment: {finishedQuorble: 75 cm}
      then:
        holds not: quorble-strained-by-measure
      ```

      ## Just so

      ```yaml boundary
      given:
        family: flumpet
        body: {quorbleGirth: 80 cm}
        garment: {finishedQuorble: 64 cm}
      then:
        holds: quorble-strained-by-measure
      ```
      """;

  private NonsenseFamily() {}

  /**
   * Writes it into a book.
   *
   * @param includes shared folders, as in a list of YAML
   */
  public static void write(Path book, String includes) {
    Map.ofEntries(
            Map.entry(
                "family.yaml",
                "name: flumpet\ncalled: [flumpet, flumpets]\nincludes: ["
                    + includes
                    + "]\nnothingWrong: {value: 64 %, since: 2026-11, source: from memory}\n"),
            Map.entry("measures.yaml", MEASURES),
            Map.entry(
                CATALOG.formatted("findings"),
                """
                - id: quorble-strained-by-measure
                  name: quorble strained by measure
                  says: The quorble is strained.
                  saysNot: The quorble is not strained.
                  withoutFault: rarely
                  figure: quorble-strain
                  source: from memory
                """),
            Map.entry("quorble/quorble-strained-by-measure.dslr", FINDING),
            Map.entry("quorble/quorble-strained-by-measure.md", FINDING_PAGE),
            Map.entry(
                "../parameters/flumpet.yaml",
                """
                - id: quorble-strained
                  value: 25 %
                  for: A quorble strained as much is too taut.
                  since: 2026-11
                  source: from memory
                """),
            Map.entry(
                CATALOG.formatted("signs"),
                SIGN.formatted("quorble-wobbles", "quorble wobbles", wobbles())
                    + SIGN.formatted("quorble-squeaks", "quorble squeaks", squeaks())),
            Map.entry(
                CATALOG.formatted("causes"),
                CAUSE.formatted("slack", "taut") + CAUSE.formatted("taut", "slack")),
            Map.entry(
                CATALOG.formatted("adjustments"),
                """
                - id: requorble-the-flumpet
                  name: requorble the flumpet
                  does: Requorble the flumpet.
                  stage: making
                  tightens: false
                  method: none
                  at: []
                  effort: minutes
                  undo: simple
                  cut: {way: nothing}
                  steps: [Requorble it.]
                  check: The quorble is quiet.
                  sideEffects: []
                  why: It is the only change there is.
                  source: from memory
                """),
            Map.entry(
                "voice/en/causes.yaml",
                """
                quorble-too-slack: {so: the quorble is too slack, perhaps: a slack quorble}
                quorble-too-taut: {so: the quorble is too taut, perhaps: a taut quorble}
                """),
            Map.entry(
                "voice/en/changes.yaml",
                "requorble-the-flumpet: {does: requorble it, bare: requorble it, check: It is quiet.}\n"),
            Map.entry(
                "quorble/quorble-too-slack.dslr",
                RULE.formatted("slack", "quorble wobbles", "fully")),
            Map.entry(
                "quorble/quorble-too-taut.dslr",
                RULE.formatted("taut", "quorble squeaks", "largely")
                    .replace(
                        "  \"requorble",
                        "  \"quorble too taut\" nearly always shows as \"quorble strained by measure\"\n  \"requorble")),
            Map.entry("quorble/quorble-too-slack.md", PAGE.formatted("slack", "quorble-wobbles")),
            Map.entry("quorble/quorble-too-taut.md", PAGE.formatted("taut", "quorble-squeaks")))
        .forEach((file, text) -> put(book.resolve(ID).resolve(file), text));
  }

  private static String wobbles() {
    return "quorble wobbles, wobbly quorble, quorble keeps wobbling, quorble is wobbling, wobbles at the"
        + " quorble, quorble goes wobbly";
  }

  private static String squeaks() {
    return "quorble squeaks, squeaky quorble, quorble keeps squeaking, quorble is squeaking, squeaks at the"
        + " quorble, quorble goes squeaky";
  }

  private static void put(Path file, String text) {
    try {
      Files.createDirectories(file.getParent());
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
