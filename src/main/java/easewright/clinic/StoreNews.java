package easewright.clinic;

import java.time.Duration;

/** Reports store events to the operator, each once. */
public interface StoreNews {
  /** Ignores all events. */
  StoreNews UNHEARD =
      new StoreNews() {
        @Override
        public void changed(StoreCondition now) {}

        @Override
        public void clockHeld(Duration held) {}
      };

  /** The store failed, failed for another reason, or recovered. */
  void changed(StoreCondition now);

  /**
   * The clock jumped ahead; reported then and once a day, as long as retention does not follow it.
   */
  void clockHeld(Duration held);
}
