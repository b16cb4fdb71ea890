/**
 * What a reply to a post says of an answer, and what it leaves out first when it has to be short.
 * The forms it is written in are templates'.
 */
package easewright.reply;
