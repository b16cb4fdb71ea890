/**
 * Reads rules, parameters, catalog and pages, compiles the rules, and puts fittings before them.
 * The only place that holds an engine session.
 */
package easewright.rulebook;
