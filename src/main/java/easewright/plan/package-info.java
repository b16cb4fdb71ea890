/**
 * From a pattern sheet, sizes, choices and cloths to what to cut, in which order, from how much
 * cloth, with which supplies; and, after a fitting, to what to cut anew. Sizes and stretch are
 * judged elsewhere.
 */
package easewright.plan;
