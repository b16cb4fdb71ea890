package easewright.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A post with the signs that its writer reports and denies, of any labelled set.
 *
 * @param fit whether it is about the fit of such a garment
 * @param maybe signs doubtful, over or fairly taken either way; they count neither way
 */
record SignPost(
    String id,
    String text,
    boolean fit,
    Set<String> present,
    Set<String> denied,
    Set<String> maybe) {
  /**
   * The posts of a file.
   *
   * @param file below the test resources, without its ending: "posts-strangers/e1"; or what a
   *     script of the training wrote: "target/held-out"
   */
  static List<SignPost> in(String file) {
    try {
      List<SignPost> posts = new ArrayList<>();
      String folder = file.startsWith("target/") ? "" : "src/test/resources";
      Path path = Path.of(folder, file + ".yaml");
      JsonNode all = new YAMLMapper().readTree(path.toFile());
      if (all.has("harmless")) {
        return linesAboutDangers(all);
      }
      for (JsonNode one : all) {
        Set<String> maybe = names(one.path("maybe"));
        maybe.addAll(names(one.path("doubtful")));
        maybe.addAll(names(one.path("past")));
        posts.add(
            new SignPost(
                one.path("id").textValue(),
                one.path("text").textValue(),
                one.path("fit").asBoolean(true),
                names(one.path("present")),
                names(one.path("denied")),
                maybe));
      }
      return posts;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Lines of which only the danger is labelled; those about circumstances are left out. */
  private static List<SignPost> linesAboutDangers(JsonNode all) {
    List<SignPost> posts = new ArrayList<>();
    for (JsonNode one : all.path("posts")) {
      if (one.has("danger")) {
        posts.add(
            line(one, Set.of(new DangerPost(one.path("danger").textValue(), null, null).danger())));
      }
    }
    all.path("harmless").forEach(one -> posts.add(line(one, Set.of())));
    return posts;
  }

  private static SignPost line(JsonNode one, Set<String> dangers) {
    return new SignPost("", one.path("text").textValue(), true, dangers, Set.of(), Set.of());
  }

  private static Set<String> names(JsonNode list) {
    Set<String> names = new HashSet<>();
    list.forEach(one -> names.add(one.isTextual() ? one.textValue() : one.path("sign").asText()));
    return names;
  }
}
