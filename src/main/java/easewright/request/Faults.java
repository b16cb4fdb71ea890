package easewright.request;

import java.util.ArrayList;
import java.util.List;

/** All faults of one request, in the order found. */
public final class Faults {
  /** Maximum number listed, more than anyone will read; the rest are only counted. */
  static final int MOST = 100;

  private final List<Fault> listed = new ArrayList<>();
  private final RequestWords words;
  private int count;

  /** Faults of a request that says nothing about the trade. */
  public Faults() {
    this(null);
  }

  /** Faults of a request for which a rule book has sentences. */
  Faults(RequestWords words) {
    this.words = words;
  }

  /** The rule book's words for this request; null where it says nothing about the trade. */
  RequestWords words() {
    return words;
  }

  void unreadable(String pointer, String problem, String remedy) {
    add(new Fault(pointer, problem, remedy, Fault.Kind.UNREADABLE));
  }

  /** Adds a fault of kind {@code IMPOSSIBLE}. */
  public void impossible(String pointer, String problem, String remedy) {
    add(new Fault(pointer, problem, remedy, Fault.Kind.IMPOSSIBLE));
  }

  /** Adds a fault. */
  public void add(Fault fault) {
    count++;
    if (listed.size() < MOST) {
      listed.add(fault);
    }
  }

  /** The first one found; only where there is any. */
  Fault first() {
    return listed.get(0);
  }

  boolean none() {
    return count == 0;
  }

  /** Rejects the request if it has faults. */
  public void refuse() {
    if (count > 0) {
      throw refusal();
    }
  }

  /** The exception with all faults. */
  public FaultyRequest refusal() {
    return new FaultyRequest(listed, count);
  }
}
