/**
 * Size systems of published standards, a pattern's own size chart, and how probable each size is
 * for a body measured with a tape that errs. Knows measurements only.
 */
package easewright.size;
