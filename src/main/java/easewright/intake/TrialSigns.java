package easewright.intake;

import easewright.intake.Reading.SignRead;
import easewright.number.WordLists;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.SignEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Adds the signs that trials tell of. */
final class TrialSigns {
  /** Not said, only shown: it is asked about. */
  private static final double PERHAPS = 0.6;

  private static final double SHOWN = 0.85;
  private static final String OR = " or ";
  private static final String SAME = "same";

  private final Signs signs;
  private final Map<String, SignEntry> catalog;
  private final Map<String, String> shown;
  private final Map<String, String> tested;
  private final Map<String, String> testOf;
  private final Map<String, String> pieceOf;
  private final Set<String> bySuccess;
  private final Set<String> onlyBrought;
  private final Map<String, AdjustmentEntry> changes;

  TrialSigns(
      Signs signs,
      Map<String, SignEntry> catalog,
      Map<String, AdjustmentEntry> changes,
      WordLists lists) {
    this.changes = changes;
    this.onlyBrought = Set.copyOf(lists.words("only brought by tightening"));
    this.signs = signs;
    this.catalog = catalog;
    this.shown = lists.pairs("shown by a trial");
    this.tested = lists.pairs("tested by a trial");
    this.testOf = lists.pairs("tests of a sign");
    this.pieceOf = lists.pairs("pieces of tests");
    this.bySuccess = Set.copyOf(lists.words("tests by success"));
  }

  /** Adds signs that a trial is said to have ended or left, since they are there without it. */
  void addSaid(TrialFinder.Found trials, Post post, List<SignRead> read) {
    // "I pinned 3 cm out and can breathe easily": she checked it, nothing says it was hard before.
    boolean tighter =
        trials.trials().stream().allMatch(one -> changes.get(one.adjustment()).tightens());
    for (Match match : trials.there()) {
      String id = match.saying().of();
      if (!signs.isDanger(id)
          && !(tighter && onlyBrought.contains(id))
          && read.stream().noneMatch(one -> one.id().equals(id) && one.present())) {
        read.removeIf(one -> one.id().equals(id));
        read.add(signs.there(match, post));
      }
    }
  }

  /**
   * The signs that were read. Where a trial helped and no sign was told, the one that the change is
   * made for is perhaps meant; no reader finds it, since no word says it. A test that changed
   * nothing is told by its sign alone and is no trial of a change.
   *
   * @param trials of which such tests are taken out
   */
  List<SignRead> withShown(TrialFinder.Found trials, List<SignRead> found, Post post) {
    List<SignRead> read = new ArrayList<>(found);
    if (read.stream().noneMatch(SignRead::present)) {
      trials.trials().stream()
          .filter(one -> shown.containsKey(one.adjustment()) && helped(one))
          .findFirst()
          .ifPresent(one -> show(one, read));
    }
    trials.trials().forEach(one -> test(one, read));
    trials.trials().removeIf(one -> isOnlyATest(one, read));
    bySuccess.forEach(test -> moveToComplaint(test, post, read));
    return read;
  }

  /**
   * A pinch that only the model read is of the edge that is complained of, not of a piece that its
   * sentence does not name and of which nothing is said.
   */
  private void moveToComplaint(String test, Post post, List<SignRead> read) {
    if (isComplained(test, read)) {
      return;
    }
    bySuccess.stream()
        .filter(other -> isComplained(other, read) && read.stream().noneMatch(s -> s.isSo(other)))
        .findFirst()
        .ifPresent(
            other ->
                read.replaceAll(
                    one ->
                        one.isSo(test)
                                && one.because().equals(catalog.get(test).name())
                                && !post.names(pieceOf.get(test), one.span())
                            ? one.as(other)
                            : one));
  }

  private boolean isComplained(String test, List<SignRead> read) {
    return testedSigns(test).stream().anyMatch(id -> read.stream().anyMatch(s -> s.isSo(id)));
  }

  /** "Lifting the strap does nothing": no amount, so no change was tried. */
  private boolean isOnlyATest(Told.TrialRead trial, List<SignRead> read) {
    String id = tested.get(trial.adjustment());
    return id != null
        && !bySuccess.contains(id)
        && trial.amount() == null
        && SAME.equals(trial.outcome())
        && read.stream().anyMatch(one -> one.id().equals(id) && !one.present());
  }

  /** A trial of what is a test in the book says how the test came out, where its fault is there. */
  private void test(Told.TrialRead trial, List<SignRead> read) {
    String id = tested.get(trial.adjustment());
    boolean asked =
        id != null
            && trial.outcome() != null
            && read.stream().anyMatch(one -> one.present() && testedSigns(id).contains(one.id()));
    if (asked) {
      boolean closes = bySuccess.contains(id) ? helped(trial) : trial.outcome().equals("right");
      boolean told =
          read.stream()
              .anyMatch(
                  one ->
                      one.id().equals(id) && one.present() == closes && one.confidence() > SHOWN);
      if (told || !closes && bySuccess.contains(id)) {
        return;
      }
      read.removeIf(one -> one.id().equals(id));
      String name = catalog.get(id).name();
      read.add(new SignRead(id, closes, null, null, null, null, name, trial.span(), SHOWN));
    }
  }

  private List<String> testedSigns(String test) {
    return List.of(testOf.getOrDefault(test, "").split(OR));
  }

  private static boolean helped(Told.TrialRead trial) {
    return "right".equals(trial.outcome()) || "better".equals(trial.outcome());
  }

  private void show(Told.TrialRead trial, List<SignRead> read) {
    String id = shown.get(trial.adjustment());
    read.removeIf(one -> one.id().equals(id));
    String name = catalog.get(id).name();
    read.add(new SignRead(id, true, null, null, null, null, name, trial.span(), PERHAPS));
  }
}
