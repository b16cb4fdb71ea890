package easewright.batch;

import java.util.concurrent.atomic.LongAdder;

/** Counts what a worker has committed since it started. */
final class Tally {
  private final LongAdder answered = new LongAdder();
  private final LongAdder setAside = new LongAdder();

  void add(boolean problem) {
    (problem ? setAside : answered).increment();
  }

  long answered() {
    return answered.sum();
  }

  long setAside() {
    return setAside.sum();
  }
}
