/**
 * Pattern sheets: a sewing pattern described in trade terms, with its sizes, choices, pieces,
 * seams, cloth needs and trims. Reads sheets, names every fault in one go, and answers which pieces
 * a change touches and how a change of girth is shared. Lengths in mm.
 */
package easewright.pattern;
