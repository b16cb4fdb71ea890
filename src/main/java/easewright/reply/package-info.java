/**
 * The content of a reply to a post, and what it omits first when it must be short. Templates define
 * its formats.
 */
package easewright.reply;
