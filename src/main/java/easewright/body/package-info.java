/**
 * Geometry and mechanics of a garment on a body: a band's stretch and pressure, a cup's height from
 * girths, the effect of a seam sewn off its line. Lengths in mm, tension in N per cm of band
 * height, pressure in kPa.
 */
package easewright.body;
