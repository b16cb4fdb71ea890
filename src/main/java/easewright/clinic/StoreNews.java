package easewright.clinic;

import java.time.Duration;

/** What whoever runs the service should hear of the store, each thing once. */
public interface StoreNews {
  /** For those who do not listen. */
  StoreNews UNHEARD =
      new StoreNews() {
        @Override
        public void changed(StoreCondition now) {}

        @Override
        public void clockHeld(Duration held) {}
      };

  /** It went out of order, for another reason than before, or came back in order. */
  void changed(StoreCondition now);

  /** The clock jumped ahead; told then and once a day, as long as retention does not go by it. */
  void clockHeld(Duration held);
}
