/**
 * What rules see of a fitting: plain records, ids in kebab case, numbers in canonical units
 * (millimetres, fractions, kilopascals, newtons per centimetre).
 */
package easewright.rulebook.facts;
