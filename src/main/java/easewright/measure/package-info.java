/**
 * Quantities as sewers write them, measuring error, and what a tape can plausibly show. Knows
 * nothing of garments, patterns or rules.
 */
package easewright.measure;
