/**
 * The desk: pages for answering questions, which work without scripts and better with them. Outside
 * a clinic the form is the whole state of its page, nothing is stored and no cookie is needed;
 * inside one, a cookie carries the key. Forms are answered through {@code answering}, like any
 * other request.
 */
package easewright.desk;
