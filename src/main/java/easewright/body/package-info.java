/**
 * What a garment does to the body it is on, as geometry and mechanics: how far a band is stretched
 * and how it presses, how a cup's height follows from girths, what a seam sewn off its line costs.
 * Lengths in mm, tension in N per cm of band height, pressure in kPa.
 */
package easewright.body;
