/** What the operator sees of the service: store, health, metrics, traces and limits. */
package easewright.operation;
