package easewright.pattern;

import java.util.Optional;

/**
 * A fault of a pattern sheet.
 *
 * @param pointer its location, as a JSON Pointer (RFC 6901) into the sheet
 * @param line its line in the text, from 1; empty if no text was read
 * @param problem what is wrong, in one sentence
 * @param remedy how to fix it, in one sentence
 */
public record SheetFault(String pointer, Optional<Integer> line, String problem, String remedy) {

  SheetFault(String pointer, String problem, String remedy) {
    this(pointer, Optional.empty(), problem, remedy);
  }

  SheetFault at(Optional<Integer> textLine) {
    return new SheetFault(pointer, textLine, problem, remedy);
  }
}
