package easewright.intake;

import easewright.intake.Reading.SignRead;
import easewright.rulebook.RuleBookSource;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Counts what is read of posts that tell of dangers, and of those that only sound like it. */
final class DangersReport {
  /** Counts of one danger or circumstance. */
  private static final class Count {
    int told;
    int right;
    int stopped;
    int flagged;
  }

  private final Intake intake;
  private final Set<String> redFlags;
  private final boolean showMisses;
  private final Map<String, Count> counts = new TreeMap<>();
  private final StringBuilder misses = new StringBuilder();
  int harmless;
  int harmlessStopped;
  int harmlessFlagged;

  /**
   * @param showMisses whether texts may be shown; never of posts kept aside
   */
  DangersReport(RuleBookSource book, Intake intake, boolean showMisses) {
    this.intake = intake;
    this.showMisses = showMisses;
    this.redFlags =
        book.catalog().signs().values().stream()
            .filter(sign -> sign.redFlag())
            .map(sign -> sign.id())
            .collect(Collectors.toSet());
  }

  private Set<String> stops(Reading reading) {
    return reading.signs().stream()
        .filter(SignRead::present)
        .map(SignRead::id)
        .filter(redFlags::contains)
        .collect(Collectors.toSet());
  }

  void add(DangerPost.Hand hand) {
    hand.posts().forEach(this::add);
    for (DangerPost post : hand.harmless()) {
      Reading reading = intake.read(post.text());
      Set<String> stops = stops(reading);
      harmless++;
      harmlessStopped += stops.isEmpty() ? 0 : 1;
      harmlessFlagged += stops.isEmpty() && !reading.readYourself().isEmpty() ? 1 : 0;
      if (!stops.isEmpty() || !reading.readYourself().isEmpty()) {
        miss("harmless", reading, post);
      }
    }
  }

  private void add(DangerPost post) {
    Reading reading = intake.read(post.text());
    Set<String> stops = stops(reading);
    if (post.danger() == null) {
      Count count = counts.computeIfAbsent("circumstance " + post.circumstance(), x -> new Count());
      boolean right =
          reading.circumstances().stream().anyMatch(one -> one.value().equals(post.circumstance()));
      count.told++;
      count.right += right ? 1 : 0;
      count.stopped += stops.isEmpty() ? 0 : 1;
      if (!right || !stops.isEmpty()) {
        miss("circumstance " + post.circumstance() + (right ? " stopped" : ""), reading, post);
      }
      return;
    }
    Count count = counts.computeIfAbsent(post.danger(), x -> new Count());
    count.told++;
    count.right += stops.contains(post.danger()) ? 1 : 0;
    count.stopped += stops.isEmpty() ? 0 : 1;
    count.flagged += !stops.isEmpty() || !reading.readYourself().isEmpty() ? 1 : 0;
    if (!stops.contains(post.danger())) {
      miss((stops.isEmpty() ? "MISSED " : "other ") + post.danger(), reading, post);
    }
  }

  private void miss(String what, Reading reading, DangerPost post) {
    if (showMisses) {
      misses.append("* %s: %s\n".formatted(what, post.text()));
      reading.signs().stream()
          .filter(one -> one.present() && redFlags.contains(one.id()))
          .forEach(
              one ->
                  misses.append(
                      "    %s by [%s] in \"%s\"\n"
                          .formatted(one.id(), one.because(), one.span().in(post.text()))));
      reading
          .readYourself()
          .forEach(
              one ->
                  misses.append(
                      "    look: [%s] \"%s\"\n".formatted(one.why(), one.span().in(post.text()))));
    }
  }

  private int sum(java.util.function.ToIntFunction<Count> of, boolean circumstances) {
    return counts.entrySet().stream()
        .filter(one -> one.getKey().startsWith("circumstance") == circumstances)
        .mapToInt(one -> of.applyAsInt(one.getValue()))
        .sum();
  }

  double stopRecall() {
    return sum(one -> one.stopped, false) / (double) sum(one -> one.told, false);
  }

  double stopOrLookRecall() {
    return sum(one -> one.flagged, false) / (double) sum(one -> one.told, false);
  }

  double circumstanceRecall() {
    return sum(one -> one.right, true) / (double) sum(one -> one.told, true);
  }

  String table() {
    StringBuilder table = new StringBuilder("| what | told | right | stop | stop or look |\n");
    table.append("|---|---|---|---|---|\n");
    counts.forEach(
        (id, one) ->
            table.append(
                "| %s | %d | %d | %d | %d |\n"
                    .formatted(id, one.told, one.right, one.stopped, one.flagged)));
    table.append(
        String.format(
            Locale.ROOT,
            "\ndangers %d: right %d, stop %d, stop or look %d\n"
                + "circumstances %d: right %d, stop %d\n"
                + "harmless %d: stop %d, look %d\n",
            sum(one -> one.told, false),
            sum(one -> one.right, false),
            sum(one -> one.stopped, false),
            sum(one -> one.flagged, false),
            sum(one -> one.told, true),
            sum(one -> one.right, true),
            sum(one -> one.stopped, true),
            harmless,
            harmlessStopped,
            harmlessFlagged));
    return table.append("\n").append(misses).toString();
  }

  static DangersReport of(RuleBookSource book, Intake intake, String folder, boolean showMisses) {
    DangersReport report = new DangersReport(book, intake, showMisses);
    List<DangerPost.Hand> hands = DangerPost.in(folder);
    hands.forEach(report::add);
    return report;
  }
}
