package easewright.fitting;

import easewright.cloth.ClothTest;
import easewright.measure.ArealWeight;

/** A cloth of the garment: its stretch test and its weight, each null when not said. */
public record ClothReport(ClothTest test, ArealWeight weight) {}
