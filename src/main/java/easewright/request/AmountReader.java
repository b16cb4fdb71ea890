package easewright.request;

import easewright.fitting.GivenAmount;
import easewright.measure.Length;
import easewright.measure.Quantity;
import easewright.measure.UnitSystem;

/** Reads the amount of a sign, a change or a trial: a length, a range, or either by place. */
final class AmountReader {
  /** As the contract has it. */
  private static final int MOST_PLACES = 20;

  private static final String MOST = "largest-amount";

  private AmountReader() {}

  static GivenAmount read(RequestField spot) {
    if (!spot.node().isObject()) {
      Length length = spot.length(null, MOST);
      return length == null ? null : GivenAmount.of(length);
    }
    spot.fields("value", "from", "to", "places");
    Integer places = spot.at("places").count(1, MOST_PLACES);
    int count = places == null ? 1 : places;
    boolean ranged = spot.at("from").isWritten() || spot.at("to").isWritten();
    if (ranged && spot.at("value").isWritten()) {
      spot.cannotBeRead("fault-two-amounts");
      return null;
    }
    return ranged ? within(spot, range(spot, count)) : within(spot, same(spot.at("value"), count));
  }

  private static GivenAmount same(RequestField spot, int places) {
    Length value = needed(spot);
    return value == null ? null : new GivenAmount(value, value, places);
  }

  private static GivenAmount range(RequestField spot, int places) {
    Length from = needed(spot.at("from"));
    Length to = needed(spot.at("to"));
    if (from == null || to == null) {
      return null;
    }
    if (from.mm() > to.mm()) {
      spot.cannotBe("fault-range-turned");
      return null;
    }
    return new GivenAmount(from, to, places);
  }

  private static Length needed(RequestField spot) {
    if (!spot.isWritten()) {
      spot.needs("fault-amount-missing");
    }
    return spot.length(null, MOST);
  }

  /** Reports a fault if all places together exceed the largest amount. */
  private static GivenAmount within(RequestField spot, GivenAmount amount) {
    double most = spot.faults().words().bound(MOST);
    if (amount == null || amount.places() * amount.to().mm() <= most) {
      return amount;
    }
    spot.cannotBe("fault-amount-in-all", "most", Length.ofMm(most).text(system(spot)));
    return null;
  }

  private static UnitSystem system(RequestField spot) {
    String written = spot.at("value").isWritten() ? "value" : "to";
    return Quantity.parse(spot.at(written).node().textValue()).system();
  }
}
