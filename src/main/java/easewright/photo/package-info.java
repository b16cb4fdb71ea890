/**
 * Photos that strangers send: checked by content, within bounds of memory and time, and written
 * anew, so that only the pixels remain.
 */
package easewright.photo;
