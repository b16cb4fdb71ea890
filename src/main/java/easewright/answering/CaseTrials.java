package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.fitting.Fitting;
import easewright.request.FaultyRequest;
import easewright.request.FittingReader;
import easewright.rulebook.RulePage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A case of a page with the fittings it is tried on.
 *
 * @param written the case
 * @param trials one, or one for each thing that is added
 */
public record CaseTrials(RulePage.RuleCase written, List<Trial> trials) {
  /**
   * One fitting of a case.
   *
   * @param added what was added, as written; "" where the case is about the fitting as it is
   * @param without the fitting without it; null where nothing else is known, or nothing was added
   * @param fitting the whole fitting
   */
  public record Trial(String added, Fitting without, Fitting fitting) {}

  /**
   * Reads the fittings of a case.
   *
   * @throws FaultyRequest if the service would refuse one of them
   */
  public static CaseTrials of(RulePage.RuleCase written, FittingReader reader) {
    boolean nothing = !written.withEach().isEmpty() && tellsNothing(written.given());
    Fitting given = nothing ? null : reader.read(written.given());
    if (written.withEach().isEmpty()) {
      return new CaseTrials(written, List.of(new Trial("", null, given)));
    }
    List<Trial> trials = new ArrayList<>();
    for (JsonNode added : written.withEach()) {
      String words = added.isTextual() ? added.textValue() : added.toString();
      trials.add(new Trial(words, given, reader.read(with(written.given(), part(added)))));
    }
    return new CaseTrials(written, trials);
  }

  /** The family alone, which a page of another than the usual one adds, is nothing to go on. */
  private static boolean tellsNothing(JsonNode given) {
    return given.isEmpty() || given.size() == 1 && given.has("family");
  }

  /** A bare name is a sign that is seen. */
  private static JsonNode part(JsonNode added) {
    if (!added.isTextual()) {
      return added;
    }
    ObjectNode part = JsonNodeFactory.instance.objectNode();
    part.putArray("signs").addObject().put("sign", added.textValue());
    return part;
  }

  /** Lists are extended, objects are merged, and any other value is replaced. */
  private static JsonNode with(JsonNode given, JsonNode added) {
    if (given instanceof ArrayNode list && added instanceof ArrayNode more) {
      return list.deepCopy().addAll(more);
    }
    if (given instanceof ObjectNode object && added instanceof ObjectNode more) {
      ObjectNode all = object.deepCopy();
      for (Map.Entry<String, JsonNode> one : more.properties()) {
        JsonNode before = all.get(one.getKey());
        all.set(one.getKey(), before == null ? one.getValue() : with(before, one.getValue()));
      }
      return all;
    }
    return added;
  }
}
