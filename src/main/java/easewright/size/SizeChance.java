package easewright.size;

/** A size and how probable it is, 0 to 1. */
public record SizeChance(SizeCell cell, double probability) {}
