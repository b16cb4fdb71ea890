/** The operator's view of the service: store, health, metrics, traces and limits. */
package easewright.operation;
