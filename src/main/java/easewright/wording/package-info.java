/** Sentences with named blanks, and the filling of them; knows nothing of what they say. */
package easewright.wording;
