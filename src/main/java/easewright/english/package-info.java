/** English words: where they begin, their stems, slips of the pen, and stretches of them. */
package easewright.english;
