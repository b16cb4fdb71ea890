package easewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.EveryShape;
import easewright.pattern.PatternSheets;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code fit}, run within the test; the packaged one is in {@code packaged/}. */
@QuarkusTest
class FitRunTest {
  @Inject FitRun fit;
  @Inject PatternSheets sheets;
  @TempDir Path folder;

  private String said(String text, String... options) throws IOException {
    Path file = Files.writeString(folder.resolve("fitting"), text);
    String[] arguments = new String[options.length + 2];
    arguments[0] = "fit";
    System.arraycopy(options, 0, arguments, 1, options.length);
    arguments[arguments.length - 1] = file.toString();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream before = System.out;
    System.setOut(new PrintStream(out, true, UTF_8));
    try {
      assertEquals(0, fit.run(arguments));
    } finally {
      System.setOut(before);
    }
    return out.toString(UTF_8);
  }

  @Test
  void every_shape_of_a_fitting_is_taken_and_said_back() throws IOException {
    String request = EveryShape.request().toString();
    EveryShape.assertSaidIn(said(request));
    JsonNode answer = new ObjectMapper().readTree(said(request, "--json", "--full"));
    assertEquals(EveryShape.request().path("trials"), answer.at("/soFar/trials"));
    assertEquals(4, answer.at("/understood/tried").size(), answer::toString);
  }

  @Test
  void a_post_may_be_about_a_pattern_of_the_operators_own() throws IOException {
    String sheet = Files.readString(Path.of("openapi/examples/small-sheet.yaml"));
    sheets.offer(List.of(sheets.readToOffer(sheet)), true);
    try {
      String answer = said("The band rides up.", "--pattern", "wickenfell-top", "--json");
      assertEquals(
          "wickenfell-top", new ObjectMapper().readTree(answer).at("/understood/sheet").asText());
    } finally {
      sheets.offer(List.of(), true);
    }
  }

  @Test
  void a_question_of_a_post_is_answered_first_in_every_form() throws IOException {
    String post = "The bra band rides up at the back. Should I let out the band?";
    for (String form : new String[] {"--markdown", "--short", "--text"}) {
      String said = said(post, form);
      int answered = said.indexOf("I wouldn't let out the band");
      assertTrue(answered >= 0 && answered < said.indexOf("a bit too long"), form + "\n" + said);
    }
  }
}
