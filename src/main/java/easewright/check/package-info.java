/**
 * Checks before cutting: the size to cut with its uncertainty, the meanings of a size label, and
 * what a cloth or an elastic is suitable for. This package computes and compares; safety cautions
 * and all sentences come from the rule book.
 */
package easewright.check;
