/**
 * The service itself, independent of its callers: holds and reloads the rule book, answers
 * fittings, checks, cut plans and cases. Takes JSON trees and returns answers; knows nothing of
 * HTTP.
 */
package easewright.answering;
