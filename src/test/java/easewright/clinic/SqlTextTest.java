package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every statement of the store is a text of the program (CWE-89; OWASP Query Parameterization Cheat
 * Sheet): literals and constants, never request data.
 */
class SqlTextTest {
  private static final Pattern STATEMENT =
      Pattern.compile("\\.(?:createQuery|createUpdate|createBatch|createScript|execute|select)\\(");
  private static final Pattern LITERAL =
      Pattern.compile("\"\"\".*?\"\"\"|\"(?:[^\"\\\\]|\\\\.)*\"", Pattern.DOTALL);
  private static final Pattern CONSTANTS =
      Pattern.compile("[\\s+]*(?:(?:\\w+\\.)?[A-Z][A-Z_]*[\\s+]*)*");

  @Test
  void no_statement_is_put_together_from_anything_but_literals_and_constants() throws IOException {
    List<String> mixed = new ArrayList<>();
    int seen = 0;
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(one -> one.toString().endsWith(".java")).toList()) {
        String source = Files.readString(file);
        if (!source.contains("org.jdbi") && !source.contains("java.sql")) {
          continue;
        }
        Matcher statement = STATEMENT.matcher(source);
        while (statement.find()) {
          String argument = LITERAL.matcher(argument(source, statement.end())).replaceAll("");
          seen++;
          if (!CONSTANTS.matcher(argument).matches()) {
            mixed.add(file.getFileName() + ": " + argument.strip());
          }
        }
      }
    }
    assertTrue(seen > 30, "Only " + seen + " statements were found.");
    assertEquals(List.of(), mixed);
  }

  /** The text between the brackets, ignoring brackets in literals. */
  private static String argument(String source, int from) {
    int open = 1;
    boolean quoted = false;
    for (int at = from; at < source.length(); at++) {
      char sign = source.charAt(at);
      if (sign == '"' && source.charAt(at - 1) != '\\') {
        quoted = !quoted;
      }
      if (!quoted) {
        open += sign == '(' ? 1 : sign == ')' ? -1 : 0;
        if (open == 0) {
          return source.substring(from, at);
        }
      }
    }
    throw new IllegalStateException("No end of a statement");
  }
}
