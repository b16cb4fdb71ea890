package easewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import easewright.naming.NearestName;
import easewright.rulebook.Family;
import easewright.rulebook.Voice;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Creates the files of a new entry in a rule book, with placeholders for its writer. Never
 * overwrites existing files.
 */
final class NewEntry {
  private static final int FAULTY = 2;
  private static final String TEMPLATES = "/easewright/rulebook/new/";

  private final Path book;
  private final PrintStream out;
  private final PrintStream err;

  NewEntry(Path book, PrintStream out, PrintStream err) {
    this.book = book;
    this.out = out;
    this.err = err;
  }

  /** Returns 0, or 2 if the arguments name nothing that can be created. */
  int write(Rules.Kind kind, String id, String topic) throws IOException {
    if (!Files.exists(book.resolve("vocabulary.dsl"))) {
      return refuse("There is no rule book in \"" + book + "\": name a folder that holds one.");
    }
    if (!id.matches("[a-z0-9][a-z0-9-]*") || id.endsWith("-") || id.contains("--")) {
      return refuse("\"" + id + "\" is no id: write small letters joined by hyphens.");
    }
    Optional<Path> there = there(id);
    if (there.isPresent()) {
      return refuse(id + " is in the book already: " + shown(there.get()) + ".");
    }
    Path list = book.resolve("catalog/" + kind + "s/" + topic + ".yaml");
    if (!Files.exists(list)) {
      List<String> topics = topics(list.getParent());
      return refuse(
          "There is no topic \""
              + topic
              + "\" of "
              + kind
              + "s. "
              + NearestName.remedy(topic, topics));
    }
    append(list, kind + ".yaml", id);
    Optional<Path> spoken = spoken(kind);
    if (spoken.isPresent()) {
      append(spoken.get(), "voice-" + kind + ".yaml", id);
    }
    Optional<String> place = place(kind, topic);
    if (place.isPresent()) {
      Path folder = folder(place.get(), topic);
      Files.createDirectories(folder);
      for (String ending : List.of(".dslr", ".md")) {
        Path file = folder.resolve(id + ending);
        Files.writeString(file, filled(kind + ending, id), StandardOpenOption.CREATE_NEW);
        out.println("written: " + shown(file));
      }
    }
    out.println("Now fill in what \"rules check\" names, then run \"rules try\".");
    return 0;
  }

  private void append(Path list, String template, String id) throws IOException {
    String end = Files.readString(list).endsWith("\n") ? "" : "\n";
    Files.writeString(list, end + filled(template, id), StandardOpenOption.APPEND);
    out.println("added to " + shown(list));
  }

  /** The file that says how replies call a kind; signs and findings are not said in them. */
  private Optional<Path> spoken(Rules.Kind kind) {
    Path voice = book.resolve("voice/" + Voice.USUAL);
    return switch (kind) {
      case cause -> Optional.of(voice.resolve("causes.yaml"));
      case adjustment -> Optional.of(voice.resolve("changes.yaml"));
      case caution -> Optional.of(voice.resolve("cautions.yaml"));
      case sign, finding -> Optional.empty();
    };
  }

  /** The folder for rules of a kind; signs and adjustments need no rule file of their own. */
  private static Optional<String> place(Rules.Kind kind, String topic) {
    return switch (kind) {
      case cause -> Optional.of(topic);
      case finding -> Optional.of("findings");
      case caution -> Optional.of("cautions");
      case sign, adjustment -> Optional.empty();
    };
  }

  private String shown(Path file) {
    return book.relativize(file).toString().replace('\\', '/');
  }

  private Optional<Path> there(String id) throws IOException {
    try (Stream<Path> walk = Files.walk(book)) {
      for (Path file : walk.filter(Files::isRegularFile).sorted().toList()) {
        boolean named = file.getFileName().toString().matches(id + "\\.(dslr|md)");
        boolean listed =
            file.toString().endsWith(".yaml")
                && shown(file).startsWith("catalog/")
                && Files.readAllLines(file).stream()
                    .anyMatch(line -> line.strip().equals("- id: " + id));
        if (named || listed) {
          return Optional.of(file);
        }
      }
    }
    return Optional.empty();
  }

  private static List<String> topics(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".yaml"))
          .map(name -> name.substring(0, name.length() - ".yaml".length()))
          .sorted()
          .toList();
    }
  }

  /** The shared folder of a topic, if there is one; else a folder of the usual family. */
  private Path folder(String place, String topic) {
    Path shared = book.resolve(Family.COMMON + topic);
    return Files.isDirectory(shared)
        ? shared
        : book.resolve(Family.usual(Family.in(book)).id()).resolve(place);
  }

  private static String filled(String template, String id) throws IOException {
    String name = id.replace('-', ' ');
    try (InputStream stream = NewEntry.class.getResourceAsStream(TEMPLATES + template)) {
      return new String(stream.readAllBytes(), UTF_8)
          .replace("{id}", id)
          .replace("{name}", name)
          .replace("{title}", Character.toUpperCase(name.charAt(0)) + name.substring(1))
          .replace("{since}", YearMonth.now().toString());
    }
  }

  private int refuse(String why) {
    err.println(why);
    return FAULTY;
  }
}
