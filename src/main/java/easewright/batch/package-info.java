/**
 * Large batches of fittings through Apache Kafka: reads them from one topic, answers them through
 * {@code answering}, and writes answers and problems to two others. Active only if brokers are
 * configured; no other package uses it.
 */
package easewright.batch;
