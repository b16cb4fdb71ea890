/**
 * What a cloth and an elastic can do: stretch, growth and recovery from tests made at a kitchen
 * table, layers worn together, and the width a pattern needs when the cloth is not the one it was
 * drafted for. Numbers only, each with its error; what they mean for a garment is judged elsewhere.
 */
package easewright.cloth;
