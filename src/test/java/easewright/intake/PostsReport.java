package easewright.intake;

import easewright.intake.Reading.SignRead;
import easewright.measure.Quantity;
import easewright.number.AmountRead;
import easewright.rulebook.RuleBookSource;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Compares readings of labelled posts with their labels, kind by kind. */
final class PostsReport {
  /** Rounding of a label, millimetres. */
  private static final double SAME_MM = 0.6;

  /** How often something was found rightly, found wrongly, and missed. */
  static final class Count {
    int right;
    int wrong;
    int missed;

    double precision() {
      return right + wrong == 0 ? 1 : right / (double) (right + wrong);
    }

    double recall() {
      return right + missed == 0 ? 1 : right / (double) (right + missed);
    }

    void compare(Collection<String> found, Collection<String> wanted) {
      Set<String> left = new TreeSet<>(wanted);
      for (String one : found) {
        if (left.remove(one)) {
          right++;
        } else {
          wrong++;
        }
      }
      missed += left.size();
    }
  }

  final Map<String, Count> counts = new LinkedHashMap<>();
  int posts;
  int kindWrong;
  int polarityWrong;
  int polarityRight;
  private final Map<String, Boolean> redFlags = new HashMap<>();

  PostsReport(RuleBookSource book) {
    book.catalog().signs().values().forEach(sign -> redFlags.put(sign.id(), sign.redFlag()));
  }

  Count of(String kind) {
    return counts.computeIfAbsent(kind, any -> new Count());
  }

  void add(LabelledPost post, Reading read) {
    posts++;
    kindWrong += read.fitQuestion() == post.fit() ? 0 : 1;
    signs(post, read);
    quantities(post, read);
    of("size cut")
        .compare(
            listed(read.sizeCut()),
            post.sizeCut() == null ? List.of() : List.of(post.sizeCut().toUpperCase(Locale.ROOT)));
    of("circumstances").compare(values(read.circumstances()), post.circumstances());
    of("causes suspected").compare(values(read.suspected()), post.beliefs());
    of("earlier changes")
        .compare(
            read.earlier().stream().map(one -> change(one, post)).toList(),
            post.earlier().stream()
                .map(one -> change(one.adjustment(), one.amount(), one.outcome()))
                .toList());
  }

  private void signs(LabelledPost post, Reading read) {
    Set<String> wanted =
        post.present().stream().map(LabelledPost.Present::sign).collect(Collectors.toSet());
    List<SignRead> counted =
        read.signs().stream().filter(one -> !post.maybe().contains(one.id())).toList();
    List<String> present = counted.stream().filter(SignRead::present).map(SignRead::id).toList();
    of("signs present").compare(present, wanted);
    of("red flags")
        .compare(
            present.stream().filter(redFlags::get).toList(),
            wanted.stream().filter(redFlags::get).toList());
    of("signs denied")
        .compare(
            counted.stream().filter(one -> !one.present()).map(SignRead::id).toList(),
            post.denied());
    for (SignRead one : counted) {
      boolean labelled = wanted.contains(one.id()) || post.denied().contains(one.id());
      if (labelled && wanted.contains(one.id()) == one.present()) {
        polarityRight++;
      } else if (labelled) {
        polarityWrong++;
      }
    }
  }

  private void quantities(LabelledPost post, Reading read) {
    Map<String, String> found = new LinkedHashMap<>();
    read.lengths().forEach(one -> found.put(one.of() + " " + one.name(), one.text()));
    read.cloths()
        .forEach(
            one ->
                one.lengths()
                    .forEach(
                        (name, text) ->
                            found.put(one.role() + " " + one.direction() + " " + name, text)));
    Map<String, String> wanted = new LinkedHashMap<>();
    post.measurements().forEach((name, text) -> wanted.put("body " + name, text));
    post.garment().forEach((name, text) -> wanted.put("garment " + name, text));
    post.cloth()
        .forEach(
            (role, tests) ->
                tests.forEach(
                    (direction, lengths) ->
                        lengths.forEach(
                            (name, text) ->
                                wanted.put(role + " " + direction + " " + name, text))));
    of("measurements").compare(rounded(found), rounded(wanted));
    for (LabelledPost.Present sign : post.present()) {
      read.signs().stream()
          .filter(one -> one.present() && one.id().equals(sign.sign()))
          .findFirst()
          .ifPresent(
              one ->
                  of("amounts of signs")
                      .compare(
                          one.amount() == null
                              ? List.of()
                              : List.of(mm(one.amount(), sign.amount())),
                          sign.amount() == null ? List.of() : List.of(mm(sign.amount()))));
    }
  }

  private static List<String> rounded(Map<String, String> lengths) {
    return lengths.entrySet().stream().map(one -> one.getKey() + " " + mm(one.getValue())).toList();
  }

  private static String mm(String length) {
    return String.valueOf(Math.round(Quantity.parse(length).length().mm() / (2 * SAME_MM)));
  }

  /** The label where it lies within what was read, of one place or in all; else the middle. */
  private static String mm(AmountRead read, String label) {
    if (label != null) {
      double wanted = Quantity.parse(label).length().mm();
      double least = Quantity.parse(read.from()).length().mm();
      double most = read.to() == null ? least : Quantity.parse(read.to()).length().mm();
      for (int places : new int[] {1, read.places()}) {
        if (wanted > places * least - SAME_MM && wanted < places * most + SAME_MM) {
          return mm(label);
        }
      }
    }
    return mm(read.from());
  }

  private static String change(Reading.ChangeRead read, LabelledPost post) {
    String label =
        post.earlier().stream()
            .filter(one -> one.adjustment().equals(read.adjustment()))
            .map(LabelledPost.Earlier::amount)
            .filter(Objects::nonNull)
            .findFirst()
            .orElse(null);
    String amount = read.amount() == null ? "" : mm(read.amount(), label);
    return read.adjustment() + " " + amount + " " + Objects.toString(read.outcome(), "");
  }

  private static String change(String adjustment, String amount, String outcome) {
    return adjustment
        + " "
        + (amount == null ? "" : mm(amount))
        + " "
        + Objects.toString(outcome, "");
  }

  private static List<String> listed(Reading.TextRead one) {
    return one == null ? List.of() : List.of(one.value().toUpperCase(Locale.ROOT));
  }

  private static List<String> values(List<Reading.TextRead> texts) {
    return texts.stream().map(Reading.TextRead::value).toList();
  }

  /** A Markdown table. */
  String table() {
    StringBuilder table =
        new StringBuilder("| kind | precision | recall | labelled |\n|---|---|---|---|\n");
    counts.forEach(
        (kind, count) ->
            table.append(
                "| %s | %.2f | %.2f | %d |%n"
                    .formatted(
                        kind, count.precision(), count.recall(), count.right + count.missed)));
    return table
        .append(
            "| said to be so or not so, of signs found in the right place | %.2f | | %d |%n"
                .formatted(
                    polarityRight / (double) Math.max(1, polarityRight + polarityWrong),
                    polarityRight + polarityWrong))
        .append(
            "| fit question or not | %.2f | | %d |%n"
                .formatted(1 - kindWrong / (double) posts, posts))
        .toString();
  }
}
