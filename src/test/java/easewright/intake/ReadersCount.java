package easewright.intake;

import easewright.intake.Reading.SignRead;
import easewright.rulebook.Catalog.SignEntry;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** How well one way of reading finds the signs of labelled posts. */
final class ReadersCount {
  final PostsReport.Count signs = new PostsReport.Count();
  final PostsReport.Count denials = new PostsReport.Count();
  final PostsReport.Count dangers = new PostsReport.Count();

  /** Posts without a labelled danger that a danger was read in. */
  int stopped;

  /** Fit questions refused, and other posts taken for one. */
  int kindWrong;

  /** By tenth of the confidence: how many signs were read so, and how many of them rightly. */
  final int[] read = new int[10];

  final int[] right = new int[10];

  private final Map<String, SignEntry> catalog;

  ReadersCount(Map<String, SignEntry> catalog) {
    this.catalog = catalog;
  }

  void add(SignPost post, Reading reading) {
    kindWrong += reading.fitQuestion() == post.fit() ? 0 : 1;
    add(post, reading.signs());
  }

  void add(SignPost post, List<SignRead> found) {
    List<SignRead> counted =
        found.stream().filter(one -> !post.maybe().contains(one.id())).toList();
    signs.compare(ids(counted, true), post.present());
    denials.compare(ids(counted, false), post.denied());
    dangers.compare(dangers(ids(counted, true)), dangers(post.present()));
    boolean stops = !dangers(ids(counted, true)).isEmpty();
    stopped += stops && dangers(post.present()).isEmpty() ? 1 : 0;
    for (SignRead one : counted) {
      if (one.present() && !isDanger(one.id())) {
        int tenth = (int) Math.min(9, one.confidence() * 10);
        read[tenth]++;
        right[tenth] += post.present().contains(one.id()) ? 1 : 0;
      }
    }
  }

  private static Set<String> ids(List<SignRead> found, boolean present) {
    return found.stream()
        .filter(one -> one.present() == present)
        .map(SignRead::id)
        .collect(Collectors.toSet());
  }

  private Set<String> dangers(Set<String> signs) {
    return signs.stream().filter(this::isDanger).collect(Collectors.toSet());
  }

  private boolean isDanger(String sign) {
    return catalog.containsKey(sign) && catalog.get(sign).redFlag();
  }

  static final String HEAD =
      "| reader | signs: precision, recall | denials: precision, recall | dangers missed | posts stopped without one |\n"
          + "|---|---|---|---|---|\n";

  /** A row of a Markdown table. */
  String row(String name) {
    return "| %s | %.2f, %.2f | %.2f, %.2f | %d of %d | %d |%n"
        .formatted(
            name,
            signs.precision(),
            signs.recall(),
            denials.precision(),
            denials.recall(),
            dangers.missed,
            dangers.missed + dangers.right,
            stopped);
  }

  /** Stated confidence against the share that was right. */
  String reliability() {
    StringBuilder table = new StringBuilder("| confidence | read | right |\n|---|---|---|\n");
    for (int i = 0; i < read.length; i++) {
      if (read[i] > 0) {
        table.append(
            "| %.1f to %.1f | %d | %.2f |%n"
                .formatted(i / 10.0, (i + 1) / 10.0, read[i], right[i] / (double) read[i]));
      }
    }
    return table.toString();
  }
}
