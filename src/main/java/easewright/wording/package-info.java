/** Fills sentences with named blanks; knows nothing of their content. */
package easewright.wording;
