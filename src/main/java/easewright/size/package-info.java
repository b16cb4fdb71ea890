/**
 * Size systems of published standards, a pattern's own size chart, and how probable each size is
 * for a body measured with error. Knows measurements only.
 */
package easewright.size;
