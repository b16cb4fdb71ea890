/** A try-on as it was reported: nothing derived, nothing judged. */
package easewright.fitting;
