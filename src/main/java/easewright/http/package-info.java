/** The endpoints of the contract over HTTP; they parse, call {@code answering}, and write. */
package easewright.http;
