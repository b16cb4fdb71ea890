package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.clinic.Outcome;
import easewright.clinic.Round;
import easewright.clinic.Story;
import java.util.List;
import java.util.Locale;

/** Prefills the next round of a case from its earlier rounds. */
final class NextRound {
  private static final List<String> OF_ONE_TOILE =
      List.of(
          "signs",
          "fine",
          "trials",
          "couldNotTell",
          "garment",
          "whyNot",
          "text",
          "asked",
          "readYourself");

  /** Maximum in a request. */
  private static final int MOST_EARLIER = 20;

  private NextRound() {}

  /**
   * The form for the next toile of a case, with earlier reports about the wearer and the pattern.
   *
   * @param standing the dangers and circumstances that still apply, as fields of a request
   */
  static FilledForm form(Story story, ObjectNode standing) {
    ObjectNode request = fitting(story);
    ObjectNode circumstances = request.withObject("/circumstances");
    circumstances.setAll((ObjectNode) standing.withObject("/circumstances"));
    standing.set("circumstances", circumstances);
    request.setAll(standing);
    if (circumstances.isEmpty()) {
      request.remove("circumstances");
    }
    return request.isEmpty()
        ? FilledForm.blank()
        : Conversation.goingOn(FilledForm.blank(), request, "");
  }

  /**
   * What still applies to the next toile: the latest fitting without the observations and
   * measurements of that toile, but with its advice as tried if its outcome was reported.
   */
  static ObjectNode fitting(Story story) {
    if (story.rounds().isEmpty()) {
      return JsonNodeFactory.instance.objectNode();
    }
    Round last = story.rounds().get(story.rounds().size() - 1);
    ObjectNode request = last.request().deepCopy();
    request.remove(OF_ONE_TOILE);
    JsonNode change = last.fitted().advice().at("/adjustments/0/id");
    if (last.outcome() != null
        && change.isTextual()
        && request.path("earlier").size() < MOST_EARLIER) {
      String did = last.outcome() == Outcome.SOLVED ? "better" : last.outcome().name();
      request
          .withArray("earlier")
          .addObject()
          .put("adjustment", change.textValue())
          .put("outcome", did.toLowerCase(Locale.ROOT));
    }
    return request;
  }
}
