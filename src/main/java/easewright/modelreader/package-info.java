/**
 * Asks a language model of the operator's choice what a post says, at an address that speaks the
 * chat completions form. Off unless the operator names the address; nothing else in the service
 * opens a connection to another machine for a request. Nothing the model says is believed unless
 * the post holds the words it quotes.
 */
package easewright.modelreader;
