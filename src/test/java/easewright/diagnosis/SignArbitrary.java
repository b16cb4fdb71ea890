package easewright.diagnosis;

import static easewright.diagnosis.Draws.between;
import static easewright.diagnosis.Draws.mm;
import static easewright.diagnosis.Draws.uniform;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Conclusions.Shows;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Random signs, reported or denied, with place, side, degree and amount. */
final class SignArbitrary {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
  private static final Catalog CATALOG = Answering.BOOK.catalog();
  private static final List<SignEntry> SIGNS = List.copyOf(CATALOG.signs().values());
  private static final List<String> CAUSES = List.copyOf(CATALOG.causes().keySet());

  private SignArbitrary() {}

  /** With at least one of these signs present. */
  static Arbitrary<List<List<ObjectNode>>> showing(Set<String> ids) {
    return Combinators.combine(
            sign(Arbitraries.of(ids).map(CATALOG.signs()::get)), any(10), any(10))
        .as(
            (flag, before, after) -> {
              ObjectNode first = flag.get(0);
              if (first.path("seen").asText().equals("absent")) {
                first = JSON.objectNode().put("sign", first.get("sign").asText());
              }
              List<List<ObjectNode>> all = new ArrayList<>(before);
              all.add(List.of(first));
              all.addAll(after);
              return firstOfEach(all, first.get("sign").asText());
            });
  }

  private static List<List<ObjectNode>> firstOfEach(List<List<ObjectNode>> all, String wanted) {
    List<List<ObjectNode>> kept = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (List<ObjectNode> one : all) {
      String id = one.get(0).get("sign").asText();
      boolean denied = one.get(0).path("seen").asText().equals("absent");
      if (!(id.equals(wanted) && (denied || one.size() > 1)) && seen.add(id)) {
        kept.add(one);
      }
    }
    return kept;
  }

  /** Signs of every kind, half of them such as one cause shows. */
  static Arbitrary<List<List<ObjectNode>>> any(int most) {
    return Arbitraries.of(CAUSES)
        .flatMap(
            cause -> {
              List<SignEntry> shown =
                  Answering.BOOK.always().shows().stream()
                      .filter(s -> s.cause().equals(cause))
                      .map(Shows::sign)
                      .distinct()
                      .filter(CATALOG.signs()::containsKey)
                      .map(CATALOG.signs()::get)
                      .toList();
              return sign(Arbitraries.oneOf(Arbitraries.of(SIGNS), Arbitraries.of(shown)))
                  .list()
                  .uniqueElements(one -> one.get(0).get("sign").asText())
                  .ofMaxSize(most);
            });
  }

  /** One sign, or the same sign reported of the left and the right. */
  private static Arbitrary<List<ObjectNode>> sign(Arbitrary<SignEntry> entries) {
    return Combinators.combine(
            entries, uniform(100), uniform(4), uniform(8), uniform(5), between(0, 60))
        .as(
            (entry, seen, place, side, degree, amount) -> {
              ObjectNode sign = JSON.objectNode().put("sign", entry.id());
              if (entry.where() != null && place < entry.where().size()) {
                sign.put("place", entry.where().get(place));
              }
              if (seen >= 65) {
                sign.put("seen", "absent");
              } else {
                if (degree < 3) {
                  sign.put("degree", List.of("slight", "clear", "strong").get(degree));
                }
                if (entry.amount() != null && seen < 30) {
                  sign.put("amount", mm(amount));
                }
              }
              if (entry.sided() && side < 3) {
                sign.put("side", List.of("left", "right", "both").get(side));
              } else if (entry.sided() && side == 3) {
                sign.put("side", "left");
                ObjectNode right = sign.deepCopy().put("side", "right");
                return List.of(sign, seen % 2 == 0 ? right : denied(right));
              }
              return List.of(sign);
            });
  }

  private static ObjectNode denied(ObjectNode sign) {
    sign.remove(List.of("degree", "amount"));
    return sign.put("seen", "absent");
  }
}
