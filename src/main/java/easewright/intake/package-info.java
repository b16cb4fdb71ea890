/**
 * Plain text to a fitting: what a post says of signs, quantities, circumstances and earlier
 * changes, each with the words it comes from. Words are analysed by Lucene; what denies, weakens or
 * times them is a small grammar of our own. Nothing is kept or guessed at random. A trained reader
 * ({@code reading}) may read the signs besides; {@code Joined} joins both.
 */
package easewright.intake;
