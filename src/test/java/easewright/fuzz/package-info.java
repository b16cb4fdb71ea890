/** What tests with unexpected input share; they stand beside what they test. */
package easewright.fuzz;
