package easewright.pattern;

/**
 * One thing wrong with a pattern sheet.
 *
 * @param pointer where, as a JSON pointer (RFC 6901) into the sheet
 * @param problem what is wrong, in one sentence
 * @param remedy what would be right, in one sentence
 */
public record SheetFault(String pointer, String problem, String remedy) {}
