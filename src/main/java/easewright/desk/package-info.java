/**
 * The desk: pages to answer questions at, without scripts and better with them. A form is the whole
 * state of a page, so nothing is kept and no cookie is needed; what a form says goes to the same
 * endpoints as any other request.
 */
package easewright.desk;
