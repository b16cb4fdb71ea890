/**
 * Properties of cloth and elastic: stretch, growth and recovery from home tests, layers worn
 * together, and the width a pattern needs for a cloth other than the one it was drafted for.
 * Numbers only, each with its error; their meaning for a garment is judged elsewhere.
 */
package easewright.cloth;
