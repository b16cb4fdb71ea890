/**
 * The rule book for readers: the content of each page, its links, and the drawing of the garment's
 * parts. Built from the same files that answers are made from; adds no content and knows nothing of
 * the web.
 */
package easewright.handbook;
