package easewright.operation;

import easewright.clinic.StoreCondition;
import easewright.clinic.StoreNews;
import io.quarkus.logging.Log;
import java.time.Duration;

/** Logs store events for the operator, one line per change. */
class StoreLog implements StoreNews {
  @Override
  public void changed(StoreCondition now) {
    if (now.inOrder()) {
      Log.info("The clinics' store is in order again.");
    } else {
      Log.errorf(
          "The clinics' store can't be used; clinics are refused with 503 meanwhile. %s %s",
          now.fault(), now.remedy());
    }
  }

  @Override
  public void clockHeld(Duration held) {
    Log.warnf(
        "The clock went ahead by more than a week since the store was last in use, so retention"
            + " leaves %d days out and deletes that much later. If the clock is wrong, set it right."
            + " If the service was off for so long, confirm today's date at the next start:"
            + " -Deasewright.clinic.clock-right-on=YYYY-MM-DD",
        held.toDays());
  }
}
