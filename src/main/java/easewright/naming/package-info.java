/** Names: how they are written, and which known name a misspelt one probably stands for. */
package easewright.naming;
