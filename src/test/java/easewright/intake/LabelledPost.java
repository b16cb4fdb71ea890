package easewright.intake;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A post of our own writing with what a fitting teacher would take from it. {@code maybe} names
 * signs that may fairly be taken from it or not; they count neither way.
 */
record LabelledPost(
    String id,
    String style,
    String text,
    boolean fit,
    List<Present> present,
    List<String> denied,
    List<String> maybe,
    Map<String, String> measurements,
    Map<String, String> garment,
    String sizeCut,
    List<String> circumstances,
    Integer monthsSinceOperation,
    Map<String, Map<String, Map<String, String>>> cloth,
    List<Earlier> earlier,
    List<String> beliefs) {

  record Present(String sign, String place, String side, String degree, String amount) {}

  record Earlier(String adjustment, String amount, String outcome) {}

  static List<LabelledPost> in(String folder) {
    YAMLMapper yaml = new YAMLMapper();
    List<LabelledPost> posts = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of("src/test/resources", folder))) {
      for (Path file : files.sorted().toList()) {
        posts.addAll(yaml.readValue(file.toFile(), new TypeReference<List<LabelledPost>>() {}));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return posts;
  }

  LabelledPost {
    present = present == null ? List.of() : present;
    denied = denied == null ? List.of() : denied;
    maybe = maybe == null ? List.of() : maybe;
    measurements = measurements == null ? Map.of() : measurements;
    garment = garment == null ? Map.of() : garment;
    circumstances = circumstances == null ? List.of() : circumstances;
    cloth = cloth == null ? Map.of() : cloth;
    earlier = earlier == null ? List.of() : earlier;
    beliefs = beliefs == null ? List.of() : beliefs;
    sizeCut = sizeCut == null || sizeCut.isBlank() ? null : sizeCut.replace(" ", "");
  }
}
