package easewright.fitting;

import easewright.measure.Length;

/**
 * How the garment was sewn, each null when not said.
 *
 * @param seamAllowancePlanned what the pattern allows at a seam
 * @param seamAllowanceSewn what was sewn
 * @param seams how many such seams the girth crosses
 */
public record Making(Length seamAllowancePlanned, Length seamAllowanceSewn, Integer seams) {}
