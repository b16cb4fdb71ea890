package easewright.handbook;

/**
 * A name that may have a page.
 *
 * @param name as written in the rule book
 * @param href address of its page, or null if it has none
 */
public record PageLink(String name, String href) {}
