package easewright.fitting;

import easewright.cloth.ElasticTest;
import easewright.measure.Length;

/**
 * The elastic in the band.
 *
 * @param test with a weight hung from it; null when not tested
 * @param width of the elastic; null when not said
 * @param cut the length that was cut for the band, joining included; null when not said
 */
public record ElasticReport(ElasticTest test, Length width, Length cut) {}
