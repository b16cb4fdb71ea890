/** Batches without a broker; {@code packaged.BatchIT} runs them through a real one. */
package easewright.batch;
