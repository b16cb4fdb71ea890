package easewright.rulebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Names rules may use that stand in no catalog, because Java or a pattern sheet supplies them. */
final class Names {
  static final Set<String> CIRCUMSTANCES =
      Set.of(
          "nursing",
          "pregnant",
          "operated-recently",
          "implant-or-expander",
          "lymphoedema-or-nodes-removed",
          "radiotherapy",
          "chemotherapy",
          "port-or-pacemaker",
          "shingles",
          "hurt-ribs",
          "prosthesis-or-pocket",
          "growing",
          "high-impact",
          "medium-impact",
          "low-impact",
          "sleeping-in-it",
          "wearing-it-all-day",
          "latex-sensitive",
          "adjustable-straps-slackened-already");

  static final Set<String> TRAITS =
      Set.of(
          "compression",
          "shaped-front",
          "pull-on",
          "front-opening",
          "back-opening",
          "cased-elastic",
          "low-support",
          "medium-support",
          "high-support",
          "lined",
          "with-support-layer",
          "adjustable-straps",
          "pieces-on-the-fold");

  static final Set<String> FIGURES =
      Stream.concat(
              Stream.of(
                  "bust-difference",
                  "band-strain",
                  "band-strain-excess",
                  "bust-strain-excess",
                  "band-shortfall",
                  "cup-shortfall",
                  "band-pressure",
                  "elastic-tension",
                  "best-size-probability",
                  "runner-up-size-probability",
                  "cup-volume",
                  "bust-point-width-excess",
                  "apex-drop",
                  "front-length-shortfall",
                  "stretch-margin-around",
                  "stretch-margin-along",
                  "recovery-margin",
                  "stretch-direction-margin",
                  "width-factor",
                  "allowance-girth-error",
                  "months-since-operation",
                  "number-of-earlier-rounds"),
              Stream.of("main", "lining", "support")
                  .flatMap(
                      role ->
                          Stream.of("-stretch-around", "-stretch-along", "-recovery", "-growth")
                              .map(role::concat)))
          .collect(Collectors.toSet());

  /** Parameters that words of the catalog and the rules stand for. */
  static final List<String> WORDS = List.of("without-fault-", "trust-", "ask-", "effort-");

  static final Set<String> BARE_WORDS =
      Set.of(
          "nearly-always",
          "usually",
          "often",
          "sometimes",
          "rarely",
          "never",
          "fully",
          "largely",
          "partly",
          "common",
          "fairly-common",
          "uncommon",
          "rare",
          "very-rare");

  static final String JAVA_SOURCES = javaSources();

  private Names() {}

  private static String javaSources() {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/easewright"))) {
      StringBuilder all = new StringBuilder();
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        all.append(Files.readString(file));
      }
      return all.toString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
