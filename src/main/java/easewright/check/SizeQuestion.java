package easewright.check;

import easewright.diagnosis.Fitting;
import easewright.measure.Measured;
import easewright.size.SizeSystem;
import java.util.List;
import java.util.Map;

/**
 * A question about a size before cutting.
 *
 * @param fitting body, pattern, choices, circumstances and signs; nothing is sewn yet
 * @param readings every single measuring, by the wire name of the measurement
 * @param system the size system to use where no pattern is given
 * @param construction how the garment shapes, where no pattern tells; null when not said
 * @param label the sizes named by a label to convert; empty for none
 * @param printedIn where the label was printed; null when not known
 */
public record SizeQuestion(
    Fitting fitting,
    Map<String, List<Measured>> readings,
    SizeSystem system,
    Construction construction,
    List<SizeLabel> label,
    Region printedIn) {

  /** How a garment supports: by compression, or with a seam or dart that gives room. */
  public enum Construction {
    /** Compresses; no shaping seam. */
    COMPRESSION,
    /** Shaped over the bust by a seam. */
    SHAPED
  }

  public SizeQuestion {
    readings = Map.copyOf(readings);
    label = List.copyOf(label);
  }
}
