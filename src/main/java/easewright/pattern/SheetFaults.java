package easewright.pattern;

import java.util.List;
import java.util.stream.Collectors;

/** A pattern sheet cannot be used; carries every fault found. */
public final class SheetFaults extends IllegalArgumentException {

  private static final long serialVersionUID = 1;

  private final transient List<SheetFault> faults;
  private final boolean readable;

  SheetFaults(List<SheetFault> faults) {
    this(faults, true);
  }

  private SheetFaults(List<SheetFault> faults, boolean readable) {
    super(
        faults.stream()
            .map(
                fault ->
                    fault.line().map(line -> "line " + line + ", ").orElse("")
                        + fault.pointer()
                        + ": "
                        + fault.problem()
                        + " "
                        + fault.remedy())
            .collect(Collectors.joining("\n")));
    // A part that others follow is read once with each of them, which duplicates its faults.
    this.faults = faults.stream().distinct().toList();
    this.readable = readable;
  }

  static SheetFaults unreadable(SheetFault fault) {
    return new SheetFaults(List.of(fault), false);
  }

  /** Whether the text could be parsed, so that the faults are in its content. */
  public boolean readable() {
    return readable;
  }

  /** The faults, in the order of the sheet if known. */
  public List<SheetFault> faults() {
    return faults;
  }
}
