package easewright.check;

import easewright.fitting.Fitting;
import easewright.measure.Measured;
import easewright.size.Region;
import easewright.size.SizeChart;
import easewright.size.SizeLabel;
import easewright.size.SizeSystem;
import java.util.List;
import java.util.Map;

/**
 * A question about a size before cutting.
 *
 * @param fitting body, pattern, choices, circumstances and signs; nothing is sewn yet
 * @param readings every single reading, by the wire name of the measurement
 * @param system the size system to use where no pattern is given
 * @param construction how the garment supports, if no pattern says so; null if not stated
 * @param label the sizes named by a label to convert; empty for none
 * @param printedIn where the label was printed; null when not known
 * @param labelOnSheet the sizes of the sheet that the label names; empty without a sheet
 */
public record SizeQuestion(
    Fitting fitting,
    Map<String, List<Measured>> readings,
    SizeSystem system,
    Construction construction,
    List<SizeLabel> label,
    Region printedIn,
    List<String> labelOnSheet) {

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
    labelOnSheet = List.copyOf(labelOnSheet);
  }

  /** The sizes to choose from: those of the sheet, else of the system. */
  public SizeChart chart() {
    return fitting.sheet() == null ? system.chart() : fitting.sheet().chart();
  }

  /** Whether the girths that tell sizes apart were measured; the bust alone may be enough. */
  public boolean hasGirths() {
    return fitting.body().bust() != null
        && (fitting.body().underbust() != null
            || fitting.sheet() != null && chart().goesByBustAlone());
  }
}
