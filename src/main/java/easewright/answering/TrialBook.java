package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.pattern.PatternSheets;
import easewright.request.IntakeAnswer;
import easewright.rulebook.RulePage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A rule book under trial by its writer, with its cases and with posts in plain words. */
public final class TrialBook {
  private final Edition edition;
  private final PageCases cases;

  private TrialBook(Edition edition, PatternSheets sheets) {
    this.edition = edition;
    this.cases = new PageCases(edition.book(), sheets);
  }

  /**
   * Checks and compiles the book in a folder.
   *
   * @throws BrokenBook with every fault
   */
  public static TrialBook of(Path folder, PatternSheets sheets) {
    return new TrialBook(new OwnBook(sheets).load(folder), sheets);
  }

  /** Number of rules. */
  public int rules() {
    return edition.book().whole().rules().size();
  }

  /** Its pages by id. */
  public Map<String, RulePage> pages() {
    return edition.book().whole().pages();
  }

  /** The differences between a case and its answer, one per line; empty if it passes. */
  public List<String> wrong(RulePage.RuleCase one) {
    return cases.wrong(one);
  }

  /**
   * Reads a post and answers it, in lines for the rule writer: what was read and by which phrase,
   * what was not read, and the result.
   *
   * @throws FaultyRequest if the post is not a fit question or cannot be answered
   */
  public List<String> answer(String post) {
    ObjectNode request = JsonNodeFactory.instance.objectNode().put("text", post);
    IntakeAnswer read = edition.read(request);
    List<String> lines = new ArrayList<>();
    lines.add("Read:");
    for (IntakeAnswer.SpanNote span : read.spans()) {
      lines.add(
          "  \"%s\" as %s%s"
              .formatted(
                  span.text(),
                  said(read.fitting().at(span.pointer())),
                  span.because() == null ? "" : ", by the phrase \"" + span.because() + "\""));
    }
    for (IntakeAnswer.NotUnderstoodNote not : read.notUnderstood()) {
      lines.add(
          "  not understood: \"%s\"; perhaps %s"
              .formatted(
                  not.text(), not.perhaps().stream().map(IntakeAnswer.PerhapsNote::sign).toList()));
    }
    Answer answer = edition.answer(request);
    lines.add("Causes:");
    answer.causes().forEach(c -> lines.add("  " + number(c.probability()) + " " + c.id()));
    if (answer.nothingWrong() != null) { // with a danger nothing is weighed
      lines.add("  " + number(answer.nothingWrong()) + " nothing wrong");
    }
    lines.add("Cautions:");
    answer.cautions().forEach(c -> lines.add("  " + c.id()));
    lines.add("Advised:");
    answer.adjustments().forEach(a -> lines.add("  " + a.id()));
    lines.add("Held back:");
    answer.heldBack().forEach(h -> lines.add("  " + h.id() + ": " + h.because()));
    lines.add("Asked next:");
    answer.questions().forEach(q -> lines.add("  " + q.sign()));
    return lines;
  }

  private static String said(JsonNode node) {
    return node.isTextual() ? node.textValue() : node.toString();
  }

  private static String number(double probability) {
    return String.format(Locale.ROOT, "%.2f", probability);
  }
}
