package easewright.pattern;

import easewright.size.Region;

/**
 * Another name of a size: "34C" in the United Kingdom, or "38/40" wherever it is printed.
 *
 * @param region the region that uses it; null for all
 * @param label as printed, such as "34DD/E"
 */
public record SizeAlias(Region region, String label) {}
