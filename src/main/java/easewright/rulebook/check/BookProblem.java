package easewright.rulebook.check;

/**
 * One thing wrong with a rule book.
 *
 * @param file the file, within the rule book's folder
 * @param line its line, from 1; 0 where the whole file or folder is meant
 * @param problem what is wrong, in one sentence
 * @param remedy what would be right, in one sentence
 */
public record BookProblem(String file, int line, String problem, String remedy) {

  /** The whole in one line, as editors and terminals recognise places. */
  public String text() {
    return file + (line > 0 ? ":" + line : "") + ": " + problem + " " + remedy;
  }
}
