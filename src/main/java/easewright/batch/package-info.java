/**
 * Large batches of fittings through Apache Kafka: reads them from one topic, answers them through
 * {@code answering}, and writes answers and problems to two others. Opened only where brokers are
 * named; no other package uses it.
 */
package easewright.batch;
