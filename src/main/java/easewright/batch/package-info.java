/**
 * Large batches of fittings through Apache Kafka: takes them from one topic, answers them as the
 * endpoint would, and puts answers and refusals into two others. Opened only where brokers are
 * named; knows only {@code api} and its answers, and nothing knows it.
 */
package easewright.batch;
