/**
 * The service itself, whoever calls it: holds the rule book and reloads it, answers fittings,
 * checks, cut plans and cases. Takes JSON trees and gives answers; knows nothing of HTTP.
 */
package easewright.answering;
