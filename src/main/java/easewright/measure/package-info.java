/**
 * Quantities as sewers write them, measuring error, and plausibility of tape measurements. Knows
 * nothing of garments, patterns or rules.
 */
package easewright.measure;
