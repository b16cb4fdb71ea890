/**
 * The desk: pages to answer questions at, without scripts and better with them. Outside a clinic a
 * form is the whole state of its page, nothing is kept and no cookie is needed; inside one, a
 * cookie brings the key. Forms are answered through {@code answering}, like any other request.
 */
package easewright.desk;
