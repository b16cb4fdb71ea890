package easewright.rulebook;

import java.util.concurrent.atomic.LongAdder;

/** What the consultations of a rule book have cost, counted up. Safe to share between threads. */
public final class Effort {
  private final LongAdder consultations = new LongAdder();
  private final LongAdder fired = new LongAdder();
  private final LongAdder nanos = new LongAdder();

  void add(int fired, long nanos) {
    consultations.increment();
    this.fired.add(fired);
    this.nanos.add(nanos);
  }

  /** How often the book was consulted; more than once for an answer that asks "why not". */
  public long consultations() {
    return consultations.sum();
  }

  /** How many rules fired. */
  public long fired() {
    return fired.sum();
  }

  /** The time the engine took, nanoseconds. */
  public long nanos() {
    return nanos.sum();
  }
}
