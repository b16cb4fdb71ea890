/**
 * Exact inference in a leaky noisy-OR network, summed over "nothing wrong", every single cause and
 * every pair of causes; nothing here knows about garments, rules or wire formats. Public types
 * speak of ids and probabilities; arrays stay inside the package. Formula: Jaakkola and Jordan
 * 1999, Journal of Artificial Intelligence Research 10.
 */
package easewright.inference;
