/**
 * Clinics, the cases they answer, and their store. Whoever calls comes as a {@link
 * easewright.clinic.Caller}, and reaches nothing outside the clinic of the key they hold. A body's
 * measurements stand in the rounds of a case and nowhere else.
 */
package easewright.clinic;
