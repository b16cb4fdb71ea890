/**
 * Pattern sheets: a sewing pattern described in trade terms, with its sizes, choices, pieces,
 * seams, cloth needs and trims. Reads sheets, reports all faults at once, and determines which
 * pieces a change affects and how a change of girth is distributed. Lengths in mm.
 */
package easewright.pattern;
