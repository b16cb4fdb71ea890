package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.diagnosis.Answer.FindingNote;
import easewright.rulebook.BookCopy;
import easewright.rulebook.RuleBook;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rule in a new sentence is trusted, and shows its limits, as in the old one. */
class NewComparisonTest {
  private static final String WEAK = "sports-bra/findings/elastic-weak-by-test.dslr";

  @TempDir Path folder;

  private static FindingNote weak(RuleBook book) throws IOException {
    JsonNode given =
        new ObjectMapper()
            .readTree(
                """
                {"body": {"underbust": "75 cm", "bust": "92 cm"},
                 "garment": {"underband": "60 cm"},
                 "elastic": {"width": "40 mm", "relaxed": "20 cm", "stretched": "25 cm",
                             "load": "2.3 N", "cut": "62 cm"}}
                """);
    return new Diagnosis(book, Answering.SHEETS.shipped())
        .answer(Answering.READER.read(given)).findings().stream()
            .filter(finding -> finding.id().equals("elastic-weak-by-test"))
            .findFirst()
            .orElseThrow();
  }

  /** A limit so near that the error of the test reaches beyond it. */
  private static final String LEAST =
      """

      - id: least-elastic-tension
        value: 0.55 N/cm
        for: A test of two limits.
        since: 2026-11
        source: a test
      """;

  private FindingNote weakBy(String sentence, String said) throws IOException {
    BookCopy book = BookCopy.in(folder);
    book.write("vocabulary.dsl", book.text("vocabulary.dsl") + "\n" + sentence + "\n");
    book.write("parameters/band.yaml", book.text("parameters/band.yaml") + LEAST);
    book.put(WEAK, "the \"elastic tension\" is below \"elastic too soft\"", said);
    return weak(RuleBook.compile(folder));
  }

  @Test
  void trust_and_limit_follow_a_new_sentence() throws IOException {
    FindingNote asShipped = weak(Answering.BOOK);
    assertTrue(asShipped.trust() < 0.97, "near its limit: " + asShipped);
    FindingNote now =
        weakBy(
            "[when]the \"{limit}\" exceeds the \"{figure}\"="
                + "Figure(id == \"{figure}\", parameter(\"{limit}\") > value)",
            "the \"elastic too soft\" exceeds the \"elastic tension\"");
    assertEquals(asShipped.trust(), now.trust());
    assertEquals(asShipped.limits(), now.limits());
  }

  @Test
  void a_figure_between_two_limits_is_trusted_as_far_as_it_lies_between() throws IOException {
    FindingNote now =
        weakBy(
            "[when]the \"{figure}\" lies between \"{limit}\" and \"{limit2}\"=Figure(id =="
                + " \"{figure}\", value > parameter(\"{limit}\"), value < parameter(\"{limit2}\"))",
            "the \"elastic tension\" lies between \"least elastic tension\" and \"elastic too soft\"");
    assertEquals(
        List.of("above", "below"),
        now.limits().stream().map(Answer.LimitNote::comparison).toList());
    FindingNote one = weak(Answering.BOOK);
    double value = one.figures().get(0).value();
    double most = Answering.KNOWLEDGE.parameter("elastic-too-soft");
    double sd = (most - value) / new NormalDistribution().inverseCumulativeProbability(one.trust());
    NormalDistribution figure = new NormalDistribution(value, sd);
    assertEquals(
        figure.cumulativeProbability(most) - figure.cumulativeProbability(0.55), now.trust(), 0.02);
  }
}
