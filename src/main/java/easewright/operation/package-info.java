/** What whoever runs the service sees of it: store, health, metrics and traces. */
package easewright.operation;
