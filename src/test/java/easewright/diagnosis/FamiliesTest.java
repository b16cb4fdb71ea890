package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer.CautionNote;
import easewright.fitting.Fitting;
import easewright.request.FaultyRequest;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.rulebook.RuleBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A kind of garment with a folder of its own in the rule book is judged by the rules there only.
 */
class FamiliesTest {
  private static final String OTHER = "night-vest";
  private static final String RULE = "cautions/growing-wearer.dslr";

  @TempDir Path folder;

  /** Our book, and beside it one rule for another kind of garment. */
  private RuleBook twoFamilies() throws IOException {
    try (Stream<Path> rules = Files.walk(Path.of("rules"))) {
      for (Path file : rules.filter(Files::isRegularFile).toList()) {
        Path copy = folder.resolve(Path.of("rules").relativize(file));
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
    Path other = folder.resolve(OTHER).resolve("band/growing-sleeper.dslr");
    Files.createDirectories(other.getParent());
    Files.writeString(
        folder.resolve(OTHER).resolve("family.yaml"), "name: night vest\ncalled: [night vest]\n");
    String rule = Files.readString(folder.resolve("sports-bra").resolve(RULE));
    Files.writeString(
        other,
        rule.replace("rule \"growing wearer:", "rule \"growing sleeper:")
            .replace("the wearer is \"growing\"", "the wearer is \"nursing\""));
    return RuleBook.compile(folder);
  }

  private static Fitting nursing(RuleBook book, String family) {
    ObjectNode json = JsonNodeFactory.instance.objectNode().put("family", family);
    json.putObject("circumstances").put("nursing", true);
    return new FittingReader(KnownNames.of(book.source(), Answering.SHEETS)).read(json);
  }

  private static List<String> rulesOfCautions(Answer answer) {
    return answer.cautions().stream().map(CautionNote::rule).map(Answer.RuleRef::id).toList();
  }

  @Test
  void the_request_says_whose_rules_judge_it() throws IOException {
    RuleBook book = twoFamilies();
    assertEquals(Set.of("sports-bra", OTHER), book.families().keySet());
    Diagnosis diagnosis = new Diagnosis(book, List.of());
    List<String> ours = rulesOfCautions(diagnosis.answer(nursing(book, "sports-bra")));
    assertTrue(ours.size() > 0, "nothing is said of nursing");
    assertFalse(ours.contains("growing-sleeper"), ours.toString());
    List<String> others = rulesOfCautions(diagnosis.answer(nursing(book, OTHER)));
    assertTrue(others.containsAll(ours), others + " lack some of " + ours);
    assertTrue(others.contains("growing-sleeper"), others.toString());
    // Another name of a family is as good as its id; the sheets say "soft-bra".
    assertEquals(ours, rulesOfCautions(diagnosis.answer(nursing(book, "soft-bra"))));
    FaultyRequest refused = assertThrows(FaultyRequest.class, () -> nursing(book, "night-west"));
    assertEquals(422, refused.status());
    assertEquals("/family", refused.faults().get(0).pointer());
    assertEquals("Did you mean \"night-vest\"?", refused.faults().get(0).remedy());
    assertEquals(0, book.openSessions());
  }
}
