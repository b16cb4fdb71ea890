package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.request.CircumstancesReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A post, what its writer labelled in it, and the answer she would give. A second hand, who saw no
 * answer of the service, put her words into ids of the catalog.
 *
 * @param kind "fit", "danger", "care" (a caution must stand; counted with the dangers), "nothing",
 *     "ask" or "other"
 * @param labels the post as a request without text, as if it were read without a mistake
 * @param causes causes that are what she names first
 * @param advises changes she would accept as the first advice
 * @param forbid changes that must never be the first advice
 * @param amountOf the change whose amount the post decides, or ""
 * @param amountMm that amount, mm; of one side where the change is made on each
 * @param withinMm how far off it may be, mm
 */
record ExpectedAnswer(
    String id,
    String text,
    String kind,
    ObjectNode labels,
    List<String> causes,
    List<String> advises,
    List<String> forbid,
    String amountOf,
    double amountMm,
    double withinMm) {
  private static final String NUMBER = "([0-9][0-9./ ]*?)";
  private static final Pattern LENGTH = Pattern.compile(NUMBER + " ?(mm|cm|in)\\b");
  private static final Pattern RANGE =
      Pattern.compile(NUMBER + " ?(?:-|to) ?" + NUMBER + " ?(mm|cm|in)\\b");

  /** The sum, where a label tells a part of it as well: "2 cm folded (4 cm of cloth)". */
  private static final Pattern IN_ALL =
      Pattern.compile(NUMBER + " ?(mm|cm|in) (?:in all|altogether|of cloth)");

  private static final Pattern OF_ONE_SIDE = Pattern.compile("(per|each|a|either) (side|strap)");

  /** The posts of a file below the test resources, and of the file of answers beside it. */
  static List<ExpectedAnswer> in(String set) throws IOException {
    Path folder = Path.of("src/test/resources");
    YAMLMapper yaml = new YAMLMapper();
    Map<String, JsonNode> answers = new HashMap<>();
    yaml.readTree(folder.resolve(set + "-answers.yaml").toFile())
        .forEach(one -> answers.put(one.path("id").textValue(), one));
    List<ExpectedAnswer> expected = new ArrayList<>();
    for (JsonNode post : yaml.readTree(folder.resolve(set + ".yaml").toFile())) {
      JsonNode answer = answers.get(post.path("id").textValue());
      JsonNode amount = answer.path("amount");
      expected.add(
          new ExpectedAnswer(
              post.path("id").textValue(),
              post.path("text").textValue(),
              answer.path("kind").textValue(),
              labels(post),
              texts(answer.path("causes")),
              texts(answer.path("adjustments")),
              texts(answer.path("forbid")),
              amount.path("adjustment").asText(),
              amount.path("mm").asDouble(),
              amount.path("within").asDouble()));
    }
    return expected;
  }

  private static ObjectNode labels(JsonNode post) {
    ObjectNode request = JsonNodeFactory.instance.objectNode();
    post.path("present").forEach(one -> sign(request, one, true));
    post.path("denied").forEach(one -> sign(request, one, false));
    for (String girth : List.of("bust", "underbust")) {
      length(post.at("/measurements/" + girth).asText())
          .ifPresent(length -> request.withObject("/body").put(girth, length));
    }
    for (JsonNode one : post.path("earlier")) {
      ObjectNode change = request.withArray("earlier").addObject();
      change.put("adjustment", one.path("change").textValue());
      String outcome = one.path("outcome").asText("same");
      change.put("outcome", outcome.equals("mended") ? "better" : outcome);
      length(one.path("amount").asText()).ifPresent(length -> change.put("amount", length));
    }
    for (JsonNode one : post.path("trials")) {
      ObjectNode trial = request.withArray("trials").addObject();
      trial.put("adjustment", one.path("adjustment").textValue());
      trial.put("how", one.path("how").textValue());
      trial.put("outcome", one.path("outcome").textValue());
      amount(trial, one.path("amount").asText());
    }
    for (JsonNode one : post.path("circumstances")) {
      ObjectNode all = request.withObject("/circumstances");
      if (one.textValue().endsWith("-impact")) {
        all.put("impact", one.textValue().replace("-impact", ""));
      } else {
        CircumstancesReader.flags().stream()
            .filter(flag -> alike(flag).equals(alike(one.textValue())))
            .forEach(flag -> all.put(flag, true));
      }
    }
    return request;
  }

  /** Labels name a circumstance a little otherwise than the contract: "ribs-hurt". */
  private static String alike(String circumstance) {
    return switch (circumstance) {
      case "ribs-hurt" -> "hurtribs";
      case "prosthesis" -> "prosthesisorpocket";
      case "lymphoedema" -> "lymphoedemaornodesremoved";
      default -> circumstance.replace("-", "").toLowerCase(Locale.ROOT);
    };
  }

  private static void sign(ObjectNode request, JsonNode label, boolean present) {
    ObjectNode sign = request.withArray("signs").addObject();
    sign.put("sign", label.isTextual() ? label.textValue() : label.path("sign").textValue());
    sign.put("seen", present ? "present" : "absent");
    if (present && label.isObject()) {
      for (String detail : List.of("side", "degree", "place")) {
        if (label.has(detail)) {
          sign.put(detail, label.path(detail).textValue());
        }
      }
      amount(sign, label.path("amount").asText());
    }
  }

  private static void amount(ObjectNode sign, String words) {
    Matcher sum = IN_ALL.matcher(words);
    Matcher range = RANGE.matcher(words);
    Optional<String> length = length(words);
    if (sum.find()) {
      sign.put("amount", sum.group(1).trim() + " " + sum.group(2));
    } else if (range.find()) {
      String unit = " " + range.group(3);
      ObjectNode amount = sign.putObject("amount");
      amount.put("from", range.group(1).trim() + unit).put("to", range.group(2).trim() + unit);
      if (OF_ONE_SIDE.matcher(words).find()) {
        amount.put("places", 2);
      }
    } else if (length.isPresent() && OF_ONE_SIDE.matcher(words).find()) {
      sign.putObject("amount").put("value", length.get()).put("places", 2);
    } else {
      length.ifPresent(one -> sign.put("amount", one));
    }
  }

  private static Optional<String> length(String words) {
    Matcher length = LENGTH.matcher(words);
    return length.find()
        ? Optional.of(length.group(1).trim() + " " + length.group(2))
        : Optional.empty();
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(text -> texts.add(text.asText()));
    return texts;
  }
}
