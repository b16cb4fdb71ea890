package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.rulebook.BookMutation.Part;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Without any rule, condition or sentence of the book, a named case fails. What nothing guards
 * stands in {@code unguarded.yaml} with its reason; {@code target/mutations.md} lists all.
 */
class BookProvesItselfTest {
  private static final double MOST_UNGUARDED = 0.02;

  /** Of so many mutations the short suite tries one. */
  private static final int SAMPLED = 60;

  @TempDir Path folder;

  private record Tried(BookMutation mutation, Optional<String> guard) {}

  private static List<Tried> tried(BookProof proof, List<BookMutation> mutations)
      throws InterruptedException, ExecutionException {
    ExecutorService threads =
        Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<Future<Tried>> running = new ArrayList<>();
      for (BookMutation one : mutations) {
        running.add(threads.submit(() -> new Tried(one, proof.guardOf(one))));
      }
      List<Tried> all = new ArrayList<>();
      for (Future<Tried> one : running) {
        all.add(one.get());
      }
      return all;
    } finally {
      threads.shutdownNow();
    }
  }

  /** What may go unguarded, with the reason. */
  private static Map<String, String> expected() throws IOException {
    Map<String, String> expected = new TreeMap<>();
    try (InputStream file = BookProvesItselfTest.class.getResourceAsStream("/unguarded.yaml")) {
      for (JsonNode one : new YAMLMapper().readTree(file)) {
        expected.put(one.path("part").asText(), one.path("because").asText());
      }
    }
    return expected;
  }

  @Test
  @Tag("long")
  void without_any_part_of_the_book_a_named_case_fails() throws Exception {
    BookProof proof = new BookProof();
    List<Tried> tried = tried(proof, proof.mutations());
    Files.writeString(Path.of("target/mutations.md"), report(tried));
    List<String> unguarded =
        tried.stream()
            .filter(one -> one.guard().isEmpty())
            .map(one -> one.mutation().id())
            .distinct()
            .sorted()
            .toList();
    assertEquals(
        String.join("\n", expected().keySet()),
        String.join("\n", unguarded),
        "target/mutations.md names file and line; write a case, or a reason in unguarded.yaml");
    expected().forEach((part, because) -> assertTrue(because.length() > 10, part));
    assertTrue(unguarded.size() <= MOST_UNGUARDED * tried.size(), unguarded.size() + " unguarded");
  }

  @Test
  void without_a_sampled_part_of_the_book_a_named_case_fails() throws Exception {
    BookProof proof = new BookProof();
    List<BookMutation> sample = new ArrayList<>();
    for (int i = 0; i < proof.mutations().size(); i += SAMPLED) {
      sample.add(proof.mutations().get(i));
    }
    Map<String, String> expected = expected();
    List<String> unguarded =
        tried(proof, sample).stream()
            .filter(one -> one.guard().isEmpty())
            .map(one -> one.mutation().id())
            .filter(one -> !expected.containsKey(one))
            .toList();
    assertEquals(List.of(), unguarded);
  }

  /** Taking statements out of what is heard is quick; this compiles a book without the lines. */
  @Test
  @Tag("long")
  void what_is_left_unheard_counts_as_what_is_not_written() throws Exception {
    BookProof proof = new BookProof();
    BookCopy copy = BookCopy.in(folder);
    for (int i = 11; i < proof.mutations().size(); i += proof.mutations().size() / 24) {
      BookMutation one = proof.mutations().get(i);
      List<String> lines = new ArrayList<>(copy.text(one.file()).lines().toList());
      String before = copy.text(one.file());
      if (one.part() == Part.RULE) {
        int end = one.line();
        while (!lines.get(end).strip().equals("end")) {
          end++;
        }
        lines.subList(one.line() - 1, end + 1).clear();
      } else {
        lines.remove(one.line() - 1);
      }
      if (lines.stream().noneMatch(line -> line.startsWith("rule "))) {
        continue; // a file must hold a rule
      }
      copy.write(one.file(), String.join("\n", lines) + "\n");
      Optional<String> written = proof.guardOf(one, RuleBook.compile(folder));
      Optional<String> heard = proof.guardOf(one);
      String where = one.file() + ":" + one.line();
      if (one.part() == Part.CONDITION && isAlone(before.lines().toList(), one.line())) {
        // Without any condition a rule is heard once, when the book is loaded, and not again.
        assertEquals(written.isPresent(), heard.isPresent(), where);
      } else {
        assertEquals(written, heard, where);
      }
      copy.write(one.file(), before);
    }
  }

  /** Whether a condition, by its line from 1, is the only one of its rule. */
  private static boolean isAlone(List<String> lines, int line) {
    return lines.get(line - 2).equals("when") && lines.get(line).equals("then");
  }

  private static String report(List<Tried> tried) {
    StringBuilder text = new StringBuilder("# What the cases of the book guard\n\n");
    text.append("| taken out | tried | no case fails |\n|---|---|---|\n");
    for (Part part : Part.values()) {
      List<Tried> of = tried.stream().filter(one -> one.mutation().part() == part).toList();
      text.append(
          "| %s | %d | %d |%n"
              .formatted(
                  part.name().toLowerCase(java.util.Locale.ROOT),
                  of.size(),
                  of.stream().filter(one -> one.guard().isEmpty()).count()));
    }
    text.append("\n## Unguarded\n\n");
    tried.stream()
        .filter(one -> one.guard().isEmpty())
        .forEach(one -> text.append(line(one.mutation())));
    text.append("\n## Guarded\n\n");
    tried.stream()
        .filter(one -> one.guard().isPresent())
        .forEach(
            one ->
                text.append(line(one.mutation()).strip())
                    .append(" — ")
                    .append(one.guard().get())
                    .append('\n'));
    return text.toString();
  }

  private static String line(BookMutation one) {
    return "* rules/%s:%d %s %s%n".formatted(one.file(), one.line(), one.part(), one.id());
  }
}
