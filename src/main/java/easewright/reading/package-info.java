/**
 * Reads posts by a trained model: how probably each sentence reports, denies or doubts each sign.
 * The model runs in process by ONNX Runtime. It is made by {@code src/training/reader}, whose
 * {@code text.py} takes a text apart in the same way. Knows nothing of the rule book's words.
 */
package easewright.reading;
