package easewright.request;

import java.util.ArrayList;
import java.util.List;

/** Everything wrong with one request, in the order it was found. */
public final class Faults {
  /** More than anyone will read; the rest are counted. */
  static final int MOST = 100;

  private final List<Fault> listed = new ArrayList<>();
  private final RequestWords words;
  private int count;

  /** Of a request that says nothing about the trade. */
  public Faults() {
    this(null);
  }

  /** Of a request whose faults a rule book has sentences for. */
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

  /** Adds that what is written can't be so. */
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

  boolean none() {
    return count == 0;
  }

  /** Refuses the request if anything is wrong with it. */
  public void refuse() {
    if (count > 0) {
      throw refusal();
    }
  }

  /** The refusal that names all of them. */
  public FaultyRequest refusal() {
    return new FaultyRequest(listed, count);
  }
}
