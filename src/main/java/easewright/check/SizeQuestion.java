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
 * @param readings all readings, by the wire name of the measurement
 * @param system the size system to use without a pattern
 * @param construction how the garment shapes, if no pattern states it; null if unknown
 * @param label a label to convert; null for none
 * @param printedIn where the label was printed; null if unknown
 */
public record SizeQuestion(
    Fitting fitting,
    Map<String, List<Measured>> readings,
    SizeSystem system,
    Construction construction,
    SizeLabel label,
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
  }
}
