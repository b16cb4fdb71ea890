package easewright.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Every way into the service, read from its code and its contract, so that a test over all of them
 * cannot forget a new one.
 */
public final class Endpoints {
  private static final java.nio.file.Path SOURCES = java.nio.file.Path.of("src/main/java");
  private static final Pattern DEED = Pattern.compile("case \"([a-z-]+)\" ->");
  private static final Pattern PARAMETER = Pattern.compile("@QueryParam\\(\"(\\w+)\"\\)");
  private static final Set<String> METHODS = Set.of("get", "post", "put", "delete", "patch");

  private static final Set<Endpoint> SERVED = readCode();

  private Endpoints() {}

  /** A method and a path with its parameters in braces; each deed of a form is one of its own. */
  public record Endpoint(String method, String path) implements Comparable<Endpoint> {
    public boolean isOfDesk() {
      return path.equals("/desk") || path.startsWith("/desk/");
    }

    public boolean isForm() {
      return isOfDesk() && method.equals("POST");
    }

    /** Whether it takes a photo, in a form of several parts. */
    public boolean takesPhoto() {
      return method.equals("POST") && path.endsWith("/photos");
    }

    @Override
    public int compareTo(Endpoint other) {
      return toString().compareTo(other.toString());
    }

    @Override
    public String toString() {
      return method + " " + path;
    }
  }

  /** All of them. */
  public static Set<Endpoint> all() {
    Set<Endpoint> all = new TreeSet<>(SERVED);
    all.addAll(promised());
    return all;
  }

  /** Every form that is posted at the desk. */
  public static Set<Endpoint> forms() {
    Set<Endpoint> forms = new TreeSet<>(SERVED);
    forms.removeIf(one -> !one.isForm());
    return forms;
  }

  /** The operations of the contract by method and path. */
  public static JsonNode contract() {
    try {
      return new YAMLMapper()
          .readTree(Files.readString(java.nio.file.Path.of("openapi/openapi.yaml")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every name that some resource takes as a parameter of the address. */
  public static List<String> queryParameters() {
    try (Stream<java.nio.file.Path> files = Files.walk(SOURCES)) {
      return files
          .filter(file -> file.toString().endsWith(".java"))
          .flatMap(file -> found(PARAMETER, file).stream())
          .distinct()
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Set<Endpoint> promised() {
    Set<Endpoint> promised = new TreeSet<>();
    for (Map.Entry<String, JsonNode> path : contract().path("paths").properties()) {
      for (Map.Entry<String, JsonNode> operation : path.getValue().properties()) {
        if (METHODS.contains(operation.getKey())) {
          promised.add(new Endpoint(operation.getKey().toUpperCase(Locale.ROOT), path.getKey()));
        }
      }
    }
    return promised;
  }

  private static Set<Endpoint> readCode() {
    Set<Endpoint> served = new TreeSet<>();
    for (var found :
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("easewright")) {
      if (found.isAnnotatedWith(Path.class)) {
        served.addAll(of(loaded(found.getName())));
      }
    }
    return served;
  }

  private static Class<?> loaded(String name) {
    try {
      return Class.forName(name);
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Set<Endpoint> of(Class<?> resource) {
    Set<Endpoint> served = new TreeSet<>();
    for (Method method : resource.getDeclaredMethods()) {
      for (var annotation : method.getAnnotations()) {
        HttpMethod http = annotation.annotationType().getAnnotation(HttpMethod.class);
        if (http != null) {
          String path = path(resource.getAnnotation(Path.class), method.getAnnotation(Path.class));
          for (String one : path.endsWith("/{deed}") ? deeds(resource, path) : List.of(path)) {
            served.add(new Endpoint(http.value(), one));
          }
        }
      }
    }
    return served;
  }

  private static String path(Path root, Path below) {
    String whole = root.value() + (below == null ? "" : "/" + below.value());
    return whole.replaceAll("/{2,}", "/").replaceAll("(?<=.)/$", "");
  }

  /** One method does many deeds, told apart by a switch over their names. */
  private static List<String> deeds(Class<?> resource, String path) {
    String file = resource.getName().replace('.', '/') + ".java";
    List<String> deeds = found(DEED, SOURCES.resolve(file));
    if (deeds.isEmpty()) {
      throw new IllegalStateException("No deeds were found in " + file);
    }
    return deeds.stream().map(deed -> path.replace("{deed}", deed)).toList();
  }

  private static List<String> found(Pattern wanted, java.nio.file.Path file) {
    try {
      return wanted.matcher(Files.readString(file)).results().map(match -> match.group(1)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
