/**
 * Lays rectangles on a strip of fixed width with little length: strip packing by search. Knows
 * nothing of cloth or patterns, only numbers.
 */
package easewright.layout;
