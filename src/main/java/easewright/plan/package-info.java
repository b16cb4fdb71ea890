/**
 * Makes a cut plan from a pattern sheet, sizes, choices and cloths: what to cut, in which order,
 * from how much cloth, with which supplies; and, after a fitting, what to cut again. Sizes and
 * stretch are judged elsewhere.
 */
package easewright.plan;
