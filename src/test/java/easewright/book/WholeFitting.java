package easewright.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;

/**
 * A whole fitting with what a teacher expects of the answer, written down before it was ever
 * answered, by someone who saw the lists of signs, causes and adjustments but no rule.
 *
 * @param first id of the first cause, "nothing" where nothing reported is a fault, or "unclear"
 *     where a question must come first
 * @param or causes that are just as good
 * @param second the other true cause, or "" with one fault
 * @param advises adjustments any of which is right as the first; empty where nothing should change
 * @param amountOf the adjustment whose amount the numbers decide, or ""
 * @param amountMm that amount
 * @param never adjustments a careful teacher would forbid as the first
 * @param asks signs any of which is a good first question; only where unclear
 */
public record WholeFitting(
    String id,
    String group,
    JsonNode request,
    String first,
    List<String> or,
    String second,
    List<String> advises,
    String amountOf,
    double amountMm,
    List<String> never,
    List<String> asks) {

  /** The fittings of one file of the test resources. */
  public static List<WholeFitting> of(String file) {
    try (InputStream in = WholeFitting.class.getResourceAsStream(file)) {
      List<WholeFitting> fittings = new ArrayList<>();
      for (JsonNode one : new YAMLMapper().readTree(in)) {
        JsonNode expect = one.path("expect");
        JsonNode amount = expect.path("amount");
        fittings.add(
            new WholeFitting(
                one.path("id").asText(),
                one.path("group").asText(),
                one.path("request"),
                expect.path("first").asText(),
                texts(expect.path("or")),
                expect.path("second").asText(),
                texts(expect.path("advises")),
                amount.path("adjustment").asText(),
                amount.isMissingNode()
                    ? 0
                    : easewright.measure.Length.parse(amount.path("value").asText()).mm(),
                texts(expect.path("never")),
                texts(expect.path("asks"))));
      }
      return fittings;
    } catch (IOException e) {
      throw new IllegalStateException("The fittings of " + file + " cannot be read.", e);
    }
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(text -> texts.add(text.asText()));
    return texts;
  }
}
