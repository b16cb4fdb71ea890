/**
 * Reads a fitting as facts, lets the rule book judge and weigh them, infers the likely causes,
 * works out amounts, ranks adjustments and explains each step. The answer is data; wording lives in
 * the rule book's catalog and in templates.
 */
package easewright.diagnosis;
