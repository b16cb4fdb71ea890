package easewright.pattern;

import java.util.List;
import java.util.stream.Collectors;

/** A pattern sheet that cannot be used, with everything found wrong with it. */
public final class SheetFaults extends IllegalArgumentException {

  private static final long serialVersionUID = 1;

  private final transient List<SheetFault> faults;

  SheetFaults(List<SheetFault> faults) {
    super(
        faults.stream()
            .map(fault -> fault.pointer() + ": " + fault.problem() + " " + fault.remedy())
            .collect(Collectors.joining("\n")));
    this.faults = List.copyOf(faults);
  }

  /** The faults, in the order of the sheet where one can be told. */
  public List<SheetFault> faults() {
    return faults;
  }
}
