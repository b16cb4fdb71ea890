/**
 * Looks a rule book over before it is used and names everything wrong with it at once, each with
 * its file, its line and what would be right.
 */
package easewright.rulebook.check;
