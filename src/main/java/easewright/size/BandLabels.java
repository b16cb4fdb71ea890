package easewright.size;

/**
 * Regional labels of the bands that EN 13402-3 calls 60, 65 … (rows from an encyclopaedia). Label
 * equivalence only: a printed UK or US 34 stands for 73–77 cm, not for 34 in (86.4 cm), because the
 * label still includes an old addition of about 4 in; by the measured underbust the same body is a
 * 30 ({@link SizeSystem#UK}). Ask for centimetres or inches, not for labels.
 */
public enum BandLabels {
  /** 60, 65, 70 … */
  EU(60, 5),
  /** France, Belgium, Spain: EU + 15. */
  FR(75, 5),
  /** Italy: (EU − 60) / 5. */
  IT(0, 1),
  /** United Kingdom: 2 (EU − 60) / 5 + 28. */
  UK(28, 2),
  /** United States, as UK. */
  US(28, 2),
  /** Australia and New Zealand: UK − 24. */
  AU(4, 2);

  private final int atSixty;
  private final int step;

  BandLabels(int atSixty, int step) {
    this.atSixty = atSixty;
    this.step = step;
  }

  /**
   * The label of an EU band.
   *
   * @throws IllegalArgumentException if the band is not a multiple of 5 from 60 to 150
   */
  public int ofEu(int euBand) {
    if (euBand < 60 || euBand > 150 || euBand % 5 != 0) {
      throw new IllegalArgumentException("an EU band is a multiple of 5 from 60 to 150");
    }
    return atSixty + (euBand - 60) / 5 * step;
  }

  /**
   * The EU band of a label.
   *
   * @throws IllegalArgumentException if there is no such label
   */
  public int toEu(int label) {
    int steps = (label - atSixty) / step;
    if (label < atSixty || steps > 18 || atSixty + steps * step != label) {
      throw new IllegalArgumentException("no band has this label here");
    }
    return 60 + 5 * steps;
  }
}
