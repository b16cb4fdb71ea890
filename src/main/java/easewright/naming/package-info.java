/** Finds the known name that a misspelt one was probably meant to be. */
package easewright.naming;
