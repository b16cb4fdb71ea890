package easewright.rulebook.check;

import easewright.rulebook.Family;
import easewright.rulebook.Practice;
import easewright.rulebook.Vocabulary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Looks over a rule book's folder without compiling it. */
public final class BookCheck {
  /** Marks what a new file leaves for its writer to fill in. */
  public static final String TO_FILL_IN = "???";

  private static final List<String> CATALOG =
      List.of("signs", "causes", "findings", "adjustments", "cautions", "reasons");
  private static final Pattern DATED = Pattern.compile("^## \\S", Pattern.MULTILINE);

  private final KnownWords words;
  private final Map<String, String> texts;
  private final List<BookProblem> problems = new ArrayList<>();
  private final BookSchemas schemas = new BookSchemas();
  private final Names names = new Names(problems);

  private BookCheck(Map<String, String> texts, KnownWords words) {
    this.texts = texts;
    this.words = words;
  }

  /**
   * Everything wrong with a book, by file and line; empty for a sound one.
   *
   * @param words what rules may say beside what the book defines
   */
  public static List<BookProblem> problems(Path folder, KnownWords words) {
    if (!Files.exists(folder.resolve("vocabulary.dsl"))) {
      return List.of(
          new BookProblem(
              "vocabulary.dsl",
              0,
              "The folder holds no rule book.",
              "Name a folder with vocabulary.dsl, catalog/, practice/, parameters/ and"
                  + " everyday/."));
    }
    List<BookProblem> unreadable = new ArrayList<>();
    BookCheck check = new BookCheck(BookFiles.texts(folder, unreadable), words);
    check.problems.addAll(unreadable);
    check.run();
    return check.inOrder();
  }

  private void run() {
    Map<String, Written> yaml = new LinkedHashMap<>();
    texts.forEach(
        (path, text) -> {
          if (path.endsWith(".yaml") || path.endsWith(".yml")) {
            schema(path)
                .ifPresentOrElse(
                    name -> yaml.put(path, shaped(path, name, text)), () -> stray(path));
          }
        });
    CATALOG.forEach(kind -> named(kind, "(?:[^/]+/)?catalog/" + kind + "/[^/]+", yaml));
    named("parameters", "parameters/[^/]+", yaml);
    yaml.values().stream()
        .filter(one -> one.file().matches("[^/]+/" + Family.MEASURES))
        .forEach(one -> names.add("figures", one, "/figures"));
    if (!DATED.matcher(texts.getOrDefault("CHANGES.md", "")).find()) {
      problem(
          "CHANGES.md", 0, "There is no version.", "Head the newest changes with ## and a month.");
    }
    Set<String> sentences = new HashSet<>();
    Written wording = yaml.get("wording.yaml");
    if (wording != null) {
      wording.tree().fieldNames().forEachRemaining(sentences::add);
    }
    PracticeCheck practice = new PracticeCheck(yaml, names, words, sentences, problems);
    practice.define();
    practice.run();
    CatalogCheck catalog = new CatalogCheck(names, words, sentences, problems);
    catalog.run();
    new EverydayCheck(
            names,
            words,
            yaml.values().stream().filter(one -> EverydayCheck.reads(one.file())).toList(),
            problems)
        .run();
    new VoiceCheck(names, words, yaml, problems).run();
    new FamilyCheck(names, words, yaml, texts, problems).run();
    rules(catalog);
    texts.forEach(this::unfilled);
  }

  private static Optional<String> schema(String path) {
    if (VoiceCheck.schema(path) != null) {
      return Optional.of(VoiceCheck.schema(path));
    }
    if (path.matches("(?!practice/)[^/]+/(family|measures|drawings)\\.yaml")) {
      return Optional.of(path.substring(path.indexOf('/') + 1, path.lastIndexOf('.')));
    }
    String folder = path.contains("/") ? path.substring(0, path.lastIndexOf('/')) : "";
    return path.equals("wording.yaml")
        ? Optional.of("wording")
        : folder.equals("parameters")
            ? Optional.of("parameters")
            : EverydayCheck.reads(path)
                ? Optional.of("everyday")
                : Stream.concat(
                        CATALOG.stream()
                            .filter(kind -> folder.matches("(?:[^/]+/)?catalog/" + kind)),
                        Practice.FILES.stream()
                            .filter(name -> path.equals("practice/" + name + ".yaml")))
                    .findFirst();
  }

  private void stray(String path) {
    problem(
        path,
        0,
        "Nothing reads a YAML file here.",
        "Move it to catalog/"
            + String.join("|", CATALOG)
            + ", parameters/ or everyday/; practice/ holds "
            + String.join(", ", Practice.FILES)
            + ".yaml.");
  }

  private Written shaped(String path, String schema, String text) {
    Written written = Written.read(path, 1, text, problems);
    if (!written.tree().isMissingNode() && !written.tree().isNull()) {
      problems.addAll(schemas.problems(schema, written));
    }
    return written;
  }

  private void named(String kind, String path, Map<String, Written> yaml) {
    yaml.values().stream()
        .filter(one -> one.file().matches(path))
        .forEach(one -> names.add(kind, one));
  }

  private void rules(CatalogCheck catalog) {
    Vocabulary vocabulary =
        new VocabularyCheck(names, problems).read(texts.getOrDefault("vocabulary.dsl", ""));
    RuleFileCheck rules = new RuleFileCheck(names, words, vocabulary, catalog.figures(), problems);
    PageCheck pages = new PageCheck(names, schemas, problems);
    Map<String, String> files = new TreeMap<>();
    Set<String> called = names.ids("causes", "findings", "cautions", "adjustments");
    texts.forEach(
        (path, text) -> {
          if (path.endsWith(".dslr")) {
            String id = idOf(path);
            String first = files.putIfAbsent(id, path);
            if (first != null) {
              problem(path, 0, "Another file is called the same: " + first + ".", "Rename one.");
            }
            names.known(
                id,
                "entry of the catalog",
                called,
                path,
                0,
                "Call the file after a cause, finding, caution or adjustment.");
            if (vocabulary != null) {
              rules.run(path, id, text);
            }
            String page = path.substring(0, path.length() - ".dslr".length()) + ".md";
            if (!texts.containsKey(page)) {
              problem(path, 0, "The rules have no page.", "Write " + page + " beside them.");
            }
          }
        });
    texts.forEach(
        (path, text) -> {
          if (path.endsWith(".md") && path.contains("/")) {
            if (!texts.containsKey(path.substring(0, path.length() - ".md".length()) + ".dslr")) {
              problem(path, 0, "The page has no rules.", "Write the .dslr file beside it.");
            }
            pages.run(path, text, rules.compares(idOf(path)));
          }
        });
    for (String kind : List.of("causes", "findings", "cautions")) {
      names
          .entries(kind)
          .forEach(
              (id, entry) -> {
                if (!files.containsKey(id)) {
                  problems.add(
                      entry.problem(
                          "id",
                          "The entry " + id + " has no rule file.",
                          "Write " + id + ".dslr and " + id + ".md, or delete the entry."));
                }
              });
    }
  }

  private void unfilled(String path, String text) {
    List<String> lines = text.lines().toList();
    for (int i = 0; i < lines.size() && path.contains("/"); i++) {
      int mark = lines.get(i).indexOf(TO_FILL_IN);
      if (mark >= 0) {
        problem(
            path,
            i + 1,
            "This is not filled in yet.",
            lines.get(i).substring(mark + TO_FILL_IN.length()).replaceAll("\".*", "").strip());
      }
    }
  }

  private static String idOf(String path) {
    return path.substring(path.lastIndexOf('/') + 1, path.lastIndexOf('.'));
  }

  private void problem(String file, int line, String problem, String remedy) {
    problems.add(new BookProblem(file, line, problem, remedy));
  }

  /**
   * Sorted by file and line, without duplicates; for a line not filled in, nothing else is
   * reported.
   */
  private List<BookProblem> inOrder() {
    Set<String> unfilled = new HashSet<>();
    problems.stream()
        .filter(one -> one.problem().equals("This is not filled in yet."))
        .forEach(one -> unfilled.add(one.file() + ":" + one.line()));
    return problems.stream()
        .filter(
            one ->
                one.problem().equals("This is not filled in yet.")
                    || !unfilled.contains(one.file() + ":" + one.line()))
        .distinct()
        .sorted(Comparator.comparing(BookProblem::file).thenComparing(BookProblem::line))
        .toList();
  }
}
