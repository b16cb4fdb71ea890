package easewright.handbook;

/**
 * A name that may have a page.
 *
 * @param name as the rule book writes it
 * @param href address of its page, or null when it has none
 */
public record PageLink(String name, String href) {}
