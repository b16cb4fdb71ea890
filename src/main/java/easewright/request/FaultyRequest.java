package easewright.request;

import java.util.Collection;
import java.util.List;

/** A request rejected for its content, with every fault found. */
public class FaultyRequest extends RuntimeException {
  private final transient List<Fault> faults;
  private final int count;

  FaultyRequest(List<Fault> faults, int count) {
    // No message and no stack trace: measurements must not reach a log.
    super(null, null, false, false);
    this.faults = List.copyOf(faults);
    this.count = count;
  }

  static FaultyRequest unreadable(String pointer, String problem, String remedy) {
    return new FaultyRequest(
        List.of(new Fault(pointer, problem, remedy, Fault.Kind.UNREADABLE)), 1);
  }

  static FaultyRequest impossible(String pointer, String problem, String remedy) {
    return new FaultyRequest(
        List.of(new Fault(pointer, problem, remedy, Fault.Kind.IMPOSSIBLE)), 1);
  }

  /**
   * The same, with faults that come from the text alone pointing at the text.
   *
   * @param said pointers to what the text said
   */
  public FaultyRequest atText(Collection<String> said) {
    return new FaultyRequest(
        faults.stream()
            .map(
                fault ->
                    said.stream().anyMatch(fault.pointer()::startsWith)
                        ? new Fault("/text", fault.problem(), fault.remedy(), fault.kind())
                        : fault)
            .toList(),
        count);
  }

  /**
   * The same, for a request that is part of another.
   *
   * @param pointer to the part
   */
  public final FaultyRequest under(String pointer) {
    return new FaultyRequest(
        faults.stream()
            .map(
                fault ->
                    new Fault(
                        pointer + fault.pointer(), fault.problem(), fault.remedy(), fault.kind()))
            .toList(),
        count);
  }

  /** The faults, at most {@value Faults#MOST}. */
  public final List<Fault> faults() {
    return faults;
  }

  /** Number of faults, listed or not. */
  public final int count() {
    return count;
  }

  /** 400 if anything cannot be parsed, otherwise 422. */
  public final int status() {
    return faults.stream().anyMatch(fault -> fault.kind() == Fault.Kind.UNREADABLE) ? 400 : 422;
  }
}
