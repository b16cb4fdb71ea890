package easewright.pattern;

import java.util.Optional;

/**
 * One thing wrong with a pattern sheet.
 *
 * @param pointer where, as a JSON pointer (RFC 6901) into the sheet
 * @param line the line of the text where that stands, from 1; empty where no text was read
 * @param problem what is wrong, in one sentence
 * @param remedy what would be right, in one sentence
 */
public record SheetFault(String pointer, Optional<Integer> line, String problem, String remedy) {

  SheetFault(String pointer, String problem, String remedy) {
    this(pointer, Optional.empty(), problem, remedy);
  }

  SheetFault at(Optional<Integer> textLine) {
    return new SheetFault(pointer, textLine, problem, remedy);
  }
}
