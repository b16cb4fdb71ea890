/**
 * Lays rectangles on a strip of fixed width so that little length is used: strip packing, found by
 * search. It knows nothing of cloth or patterns, only numbers.
 */
package easewright.layout;
