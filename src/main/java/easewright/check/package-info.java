/**
 * What can be known before cutting: the size to cut with its doubts, what a size label may mean,
 * and what a cloth or an elastic is fit for. Computes and compares; what may hurt is told by the
 * rule book, and every sentence stands there.
 */
package easewright.check;
