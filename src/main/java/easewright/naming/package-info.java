/** Names: how they are written, and which known name a misspelt one was probably meant to be. */
package easewright.naming;
