package easewright.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.intake.Intake;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * No regular expression of the service backtracks for long (CWE-1333, "Inefficient Regular
 * Expression Complexity") or recurses until the stack ends. Steps are counted, not timed: every
 * look at a character of the text counts one.
 */
@Tag("long")
class RegexStepsTest {
  private static final Path MAIN = Path.of("src/main/java");
  private static final Path SCHEMA =
      Path.of("src/main/resources/easewright/patterns/pattern-sheet.schema.json");
  private static final Pattern INLINE =
      Pattern.compile(
          "\\.(matches|replaceAll|replaceFirst|split)\\(\\s*\"((?:[^\"\\\\]|\\\\.)*)\"");

  /** Half of what a text of a request may hold, read with a quarter of a thread's usual stack. */
  private static final int LONGEST = 2_000;

  private static final long STACK_BYTES = 256 * 1024;

  /** Expressions of the intake that are only tried on so many characters around a place. */
  private static final Map<String, Integer> BOUNDED =
      Map.of(
          "easewright.number.ClothTestWords.", 400, // LONGEST_CLAUSE to either side
          "easewright.intake.TimeSince.tie", 16,
          "easewright.number.AmountWords.labelled", 12,
          "easewright.number.AmountWords.afterIn", 12,
          "ReadText.java ", 80); // a pointer into a request, made by the service

  /** Reads the rule book, which its keepers write; no request's text comes there. */
  private static final String NOT_FOR_REQUESTS = "easewright.rulebook.";

  /** Looks at a character of the text; what is linear with a generous factor stays below. */
  private static final long MOST_A_CHARACTER = 400;

  /** An expression, the longest text it is tried on, and whether only on the whole of it. */
  private record Tried(Pattern pattern, int longest, boolean whole) {}

  @Test
  void no_expression_looks_at_a_text_more_often_than_its_length_warrants() throws Exception {
    Map<String, Tried> all = new LinkedHashMap<>();
    all.putAll(fields());
    all.putAll(ofTheBook());
    all.putAll(inline());
    all.putAll(schema());
    assertTrue(all.size() > 60, "Only " + all.size() + " expressions were found.");
    List<String> slow = new ArrayList<>();
    Thread small = new Thread(null, () -> collect(all, slow), "small stack", STACK_BYTES);
    small.start();
    small.join();
    assertEquals(List.of(), slow);
  }

  private static void collect(Map<String, Tried> all, List<String> slow) {
    for (Map.Entry<String, Tried> one : all.entrySet()) {
      String worst = worst(one.getValue());
      if (worst != null) {
        slow.add(one.getKey() + ": " + worst);
      }
    }
  }

  private static String worst(Tried tried) {
    for (String pump : pumps(tried.pattern().pattern())) {
      for (String prefix : List.of("", "/desk")) {
        for (String suffix : List.of("", "!\n\u0000")) {
          String text = prefix + pump.repeat(tried.longest() / pump.length()) + suffix;
          try {
            long steps = steps(tried, text);
            if (steps > MOST_A_CHARACTER * text.length()) {
              return steps + " looks at " + text.length() + " characters of " + pump;
            }
          } catch (StackOverflowError deep) {
            return "recurses over " + text.length() + " characters of " + pump;
          }
        }
      }
    }
    return null;
  }

  /** Pieces that the expression may like, alone and by twos. */
  private static Set<String> pumps(String expression) {
    Set<String> signs = new LinkedHashSet<>(List.of("a", "1", " ", "-", "/", "\n", ".", ","));
    expression
        .chars()
        .filter(c -> c > ' ' && !Character.isLetterOrDigit(c))
        .limit(12)
        .forEach(c -> signs.add(Character.toString(c)));
    Set<String> pumps = new LinkedHashSet<>(signs);
    for (String one : signs) {
      signs.forEach(other -> pumps.add(one + other));
    }
    Stream.of(expression.split("[^A-Za-z ]+"))
        .filter(word -> word.length() > 1 && word.length() < 20)
        .forEach(word -> pumps.addAll(List.of(word, word + " ", "1 " + word, "1" + word)));
    return pumps;
  }

  private static long steps(Tried tried, String text) {
    CountedText whole = new CountedText(text);
    tried.pattern().matcher(whole).matches();
    if (tried.whole()) {
      return whole.looks;
    }
    CountedText parts = new CountedText(text);
    Matcher found = tried.pattern().matcher(parts);
    while (found.find()) {
      if (parts.looks > MOST_A_CHARACTER * LONGEST * 10) {
        break;
      }
    }
    return Math.max(whole.looks, parts.looks);
  }

  private static Map<String, Tried> fields() throws Exception {
    Map<String, Tried> found = new LinkedHashMap<>();
    try (Stream<Path> files = Files.walk(MAIN)) {
      for (Path file : files.filter(one -> one.toString().endsWith(".java")).toList()) {
        String name = MAIN.relativize(file).toString().replace('/', '.').replace(".java", "");
        if (name.endsWith("package-info")
            || name.startsWith(NOT_FOR_REQUESTS)
            || !Files.readString(file).contains("java.util.regex.Pattern")) {
          continue;
        }
        for (Field field : Class.forName(name).getDeclaredFields()) {
          if (field.getType() == Pattern.class && Modifier.isStatic(field.getModifiers())) {
            field.setAccessible(true);
            String called = name + "." + field.getName();
            found.put(
                called,
                new Tried(
                    (Pattern) field.get(null),
                    longest(called),
                    onlyWhole(field.getName(), Files.readString(file))));
          }
        }
      }
    }
    return found;
  }

  /** The packages that read posts. */
  private static final Set<String> READING = Set.of("easewright.intake", "easewright.number");

  /** Expressions that the reader of posts makes of the book's words. */
  private static Map<String, Tried> ofTheBook() throws Exception {
    StringBuilder source = new StringBuilder();
    for (String reading : READING) {
      try (Stream<Path> files = Files.list(MAIN.resolve(reading.replace('.', '/')))) {
        for (Path file : files.toList()) {
          source.append(Files.readString(file));
        }
      }
    }
    Map<String, Tried> found = new LinkedHashMap<>();
    gather(
        new Intake(UsualBook.read()),
        source.toString(),
        found,
        Collections.newSetFromMap(new IdentityHashMap<>()));
    assertTrue(found.size() > 20, "Only " + found.keySet());
    return found;
  }

  private static void gather(
      Object holder, String source, Map<String, Tried> found, Set<Object> seen) throws Exception {
    if (holder == null
        || !READING.contains(holder.getClass().getPackageName())
        || holder.getClass().isEnum()
        || !seen.add(holder)) {
      return;
    }
    for (Field field : holder.getClass().getDeclaredFields()) {
      if (Modifier.isStatic(field.getModifiers()) || field.getType().isPrimitive()) {
        continue;
      }
      field.setAccessible(true);
      if (field.get(holder) instanceof Pattern pattern) {
        String called = holder.getClass().getName() + "." + field.getName();
        found.put(
            called,
            new Tried(pattern, longest(called), onlyWhole("\\b" + field.getName(), source)));
      } else {
        gather(field.get(holder), source, found, seen);
      }
    }
  }

  private static int longest(String called) {
    return BOUNDED.entrySet().stream()
        .filter(bound -> called.startsWith(bound.getKey()))
        .mapToInt(Map.Entry::getValue)
        .findAny()
        .orElse(LONGEST);
  }

  /** Whether its file asks only whether the expression is all of a text. */
  private static boolean onlyWhole(String name, String source) {
    long used =
        Pattern.compile(name + "(?:\\(\\))?\\s*\\.matcher\\(").matcher(source).results().count();
    long whole =
        Pattern.compile(name + "(?:\\(\\))?\\s*\\.matcher\\([^;{]*?\\)\\s*\\.matches\\(\\)")
            .matcher(source)
            .results()
            .count();
    return used > 0 && used == whole;
  }

  private static Map<String, Tried> inline() throws IOException {
    Map<String, Tried> found = new LinkedHashMap<>();
    try (Stream<Path> files = Files.walk(MAIN)) {
      for (Path file : files.filter(one -> one.toString().endsWith(".java")).toList()) {
        Matcher written = INLINE.matcher(Files.readString(file));
        while (written.find()) {
          // Left to the pattern, which reads it as well; translateEscapes() would refuse it.
          String source = written.group(2).replaceAll("(?<!\\\\)\\\\u", "\\\\\\\\u");
          String expression = source.translateEscapes();
          String called = file.getFileName() + " " + expression;
          found.put(
              called,
              new Tried(
                  Pattern.compile(expression),
                  longest(called),
                  written.group(1).equals("matches")));
        }
      }
    }
    return found;
  }

  private static Map<String, Tried> schema() throws IOException {
    Map<String, Tried> found = new LinkedHashMap<>();
    new ObjectMapper()
        .readTree(SCHEMA.toFile())
        .findValuesAsText("pattern")
        .forEach(
            one -> found.put("schema " + one, new Tried(Pattern.compile(one), LONGEST, false)));
    return found;
  }

  /** A text that counts how often it is looked at. */
  private static final class CountedText implements CharSequence {
    private final String text;
    private long looks;

    CountedText(String text) {
      this.text = text;
    }

    @Override
    public int length() {
      return text.length();
    }

    @Override
    public char charAt(int index) {
      if (++looks > MOST_A_CHARACTER * LONGEST * 100L) {
        throw new IllegalStateException("endless");
      }
      return text.charAt(index);
    }

    @Override
    public CharSequence subSequence(int start, int end) {
      return text.subSequence(start, end);
    }
  }
}
