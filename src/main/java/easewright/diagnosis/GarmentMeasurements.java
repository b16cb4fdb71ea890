package easewright.diagnosis;

import easewright.measure.Length;

/**
 * The finished toile laid flat and not stretched, all round, each null when not measured.
 *
 * @param underband along the lower edge
 * @param bust around the fullest part
 */
public record GarmentMeasurements(Length underband, Length bust) {}
