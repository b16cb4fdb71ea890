/**
 * Reads requests: JSON in the form of the contract, and posts in plain words, become a fitting, a
 * check or a cut to plan. Every fault is named with its place, what is wrong and a remedy. Knows no
 * framework.
 */
package easewright.request;
