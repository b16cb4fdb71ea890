/**
 * The rule book arranged for reading: what stands on each page, what links where, and the drawing
 * of the garment's parts. Built from the very files that answers are made with; says nothing of its
 * own and knows nothing of the web.
 */
package easewright.handbook;
