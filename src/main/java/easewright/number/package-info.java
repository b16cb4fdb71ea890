/**
 * Numbers and lengths as writers write them, and the lists of everyday words by which posts are
 * read.
 */
package easewright.number;
