/**
 * The rule book as a whole: what its causes, weights and words come to when every part of the
 * service works on a fitting. Single rules are tested by their pages.
 */
package easewright.book;
