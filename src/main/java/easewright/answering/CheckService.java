package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.check.ClothAnswer;
import easewright.check.SizeAnswer;
import jakarta.inject.Singleton;

/** Checks sizes and cloths before cutting. Nothing is stored. */
@Singleton
public class CheckService {
  private final RuleBookService rules;

  CheckService(RuleBookService rules) {
    this.rules = rules;
  }

  /**
   * Which size to cut.
   *
   * @throws easewright.request.FaultyRequest naming every fault of the request
   */
  public SizeAnswer size(JsonNode request) {
    Edition edition = rules.edition();
    return rules.inTime(() -> edition.size(request));
  }

  /**
   * What a cloth or an elastic is suitable for.
   *
   * @throws easewright.request.FaultyRequest naming every fault of the request
   */
  public ClothAnswer cloth(JsonNode request) {
    Edition edition = rules.edition();
    return rules.inTime(() -> edition.cloth(request));
  }
}
