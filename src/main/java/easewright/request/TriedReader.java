package easewright.request;

import easewright.fitting.EarlierAdjustment;
import easewright.fitting.EarlierSize;
import easewright.fitting.GivenAmount;
import easewright.fitting.Trial;
import easewright.pattern.PatternSheet;
import easewright.rulebook.check.KnownWords;
import easewright.size.Region;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Reads what was tried: earlier changes, earlier toiles in other sizes, and trials. */
final class TriedReader {
  static final int MOST_EARLIER = 20;
  static final int MOST_TRIALS = 20;

  /** As the contract has it. */
  private static final int MOST_CHANGED = 20;

  private static final List<String> WAYS = List.of("held", "pinned", "basted", "worn", "measured");
  private static final List<String> TRIAL_OUTCOMES = List.of("right", "better", "same", "worse");

  private final KnownNames known;
  private final PatternSheet sheet;
  private final Region region;
  private final List<EarlierAdjustment> adjustments = new ArrayList<>();
  private final List<EarlierSize> sizes = new ArrayList<>();

  /**
   * @param sheet the pattern; null when not said
   * @param region the region that calls the named sizes so; null if not stated
   */
  TriedReader(KnownNames known, PatternSheet sheet, Region region) {
    this.known = known;
    this.sheet = sheet;
    this.region = region;
  }

  /** Reads the list of earlier toiles. */
  void readEarlier(RequestField list) {
    for (RequestField item : list.items(MOST_EARLIER)) {
      RequestField spot = item.fields("adjustment", "size", "amount", "outcome", "better", "worse");
      if (spot.isWritten()) {
        readOne(spot);
      }
    }
  }

  /** Earlier changes, in the order of the list. */
  List<EarlierAdjustment> adjustments() {
    return adjustments;
  }

  /** Earlier sizes, in the order of the list. */
  List<EarlierSize> sizes() {
    return sizes;
  }

  private void readOne(RequestField spot) {
    boolean sized = spot.at("size").isWritten();
    if (sized && spot.at("adjustment").isWritten()) {
      spot.cannotBeRead("fault-change-and-size");
      return;
    }
    if (sized && spot.at("amount").isWritten()) {
      spot.at("amount").cannotBeRead("fault-amount-of-a-size");
    }
    String outcome = spot.at("outcome").oneOf(KnownWords.OUTCOMES);
    List<String> better = changed(spot.at("better"));
    List<String> worse = changed(spot.at("worse"));
    if (better.stream().anyMatch(worse::contains)) {
      spot.cannotBe("fault-better-and-worse");
    }
    if (sized) {
      String size = SheetSizes.read(spot.at("size"), sheet, region);
      if (size != null) {
        sizes.add(new EarlierSize(size, outcome, better, worse));
      }
      return;
    }
    String id = adjustment(spot);
    GivenAmount amount = AmountReader.read(spot.at("amount"));
    if (id != null) {
      adjustments.add(new EarlierAdjustment(id, amount, outcome, better, worse));
    }
  }

  /** Signs that a change made better or worse. A danger belongs under "signs", where it counts. */
  private List<String> changed(RequestField list) {
    Set<String> ids = new LinkedHashSet<>();
    for (RequestField spot : list.items(MOST_CHANGED)) {
      String id = spot.oneOf(known.signs());
      if (id != null && known.dangers().contains(id)) {
        spot.cannotBe("fault-danger-as-outcome");
      } else if (id != null && !ids.add(id)) {
        spot.cannotBe("fault-named-twice", "what", "sign");
      }
    }
    return List.copyOf(ids);
  }

  /** Reads the trials. */
  List<Trial> trials(RequestField list) {
    List<Trial> trials = new ArrayList<>();
    for (RequestField item : list.items(MOST_TRIALS)) {
      RequestField spot = item.fields("adjustment", "amount", "how", "outcome");
      if (spot.isWritten()) {
        String id = adjustment(spot);
        GivenAmount amount = AmountReader.read(spot.at("amount"));
        String how = spot.at("how").oneOf(WAYS);
        String outcome = spot.at("outcome").oneOf(TRIAL_OUTCOMES);
        if (id != null) {
          trials.add(new Trial(id, amount, how, outcome));
        }
      }
    }
    return trials;
  }

  private String adjustment(RequestField spot) {
    RequestField id = spot.at("adjustment");
    if (!id.isWritten()) {
      id.needs("fault-id-missing");
    }
    return id.oneOf(known.adjustments());
  }
}
