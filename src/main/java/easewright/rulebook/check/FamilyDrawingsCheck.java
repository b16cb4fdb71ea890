package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.rulebook.Family;
import easewright.rulebook.Outline;
import easewright.rulebook.OutlineFault;
import easewright.rulebook.Practice;
import java.util.List;
import java.util.Map;

/**
 * Checks how a family's garment, signs and changes are drawn. A family may do without; the usual
 * one has an outline, on which signs are chosen.
 */
final class FamilyDrawingsCheck {
  private final String id;
  private final Map<String, Written> yaml;
  private final Map<String, String> texts;
  private final Names names;
  private final List<BookProblem> problems;

  /**
   * @param id of the family
   * @param yaml every readable YAML file of the book, by path
   * @param texts every file of the book, by path
   */
  FamilyDrawingsCheck(
      String id,
      Map<String, Written> yaml,
      Map<String, String> texts,
      Names names,
      List<BookProblem> problems) {
    this.id = id;
    this.yaml = yaml;
    this.texts = texts;
    this.names = names;
    this.problems = problems;
  }

  void run(Written family) {
    String file = id + "/" + Outline.FILE;
    if (texts.containsKey(file)) {
      outline(file);
    } else if (family.tree().path("usual").asBoolean()) {
      problems.add(
          new BookProblem(
              file,
              0,
              "The file is missing, and signs are chosen on what it draws.",
              "Take it over from the book that came with the program."));
    }
    Written drawings = yaml.get(id + "/" + Family.DRAWINGS);
    if (drawings != null) {
      garment(drawings);
      new DrawingsCheck(drawings, yaml.get(Practice.FOLDER + Family.DRAWINGS), names, problems)
          .run();
    }
  }

  private void outline(String file) {
    try {
      Outline.read(texts.get(file));
    } catch (OutlineFault fault) {
      problems.add(new BookProblem(file, fault.line(), fault.getMessage(), fault.remedy()));
    }
  }

  private void garment(Written drawings) {
    for (String part : List.of("body", "garments")) {
      JsonNode written = drawings.tree().path(part);
      if (written.isMissingNode()) {
        problems.add(
            drawings.problem(
                "", "The drawings lack their " + part + ".", "Write it, as another family does."));
      }
    }
  }
}
