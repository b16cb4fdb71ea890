package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.rulebook.Catalog.SignEntry;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/**
 * The largest request the reader takes is answered, and nothing is left behind. Why: the engine
 * bounds its firings but not its matching, so only capped inputs keep a request cheap.
 */
class LargestRequestTest {
  /** The caps of the reader of requests and of the published schema of a sheet. */
  private static final int SIGNS = 60;

  private static final int EARLIER = 20;
  private static final int WHY_NOT = 10;
  private static final int MEASURINGS = 10;
  private static final int BANDS = 14;
  private static final int CUPS = 14;
  private static final int PIECES = 32;
  private static final int TRIMS = 24;

  /** How many times as many rules the largest may fire as a typical one; matches grow with both. */
  private static final long MOST_TIMES = 12;

  @Test
  void the_largest_legal_request_fires_a_bounded_multiple_of_a_typical_ones_rules()
      throws IOException {
    Fitting typical =
        Answering.read(
            new ObjectMapper().readTree(Path.of("openapi/examples/second-fitting.json").toFile()));
    Fitting largest = Answering.read(largest());
    assertEquals(SIGNS, largest.signs().size());
    assertEquals(BANDS * CUPS, largest.sheet().sizes().size());
    long usual = fired(typical);
    long most = fired(largest);
    assertTrue(usual > 0 && most < MOST_TIMES * usual, most + " rules fired against " + usual);
    assertEquals(0, Answering.BOOK.openSessions());
  }

  /** Rules fired in answering: what the engine's work grows with, however busy the machine is. */
  private static long fired(Fitting fitting) {
    long before = Answering.BOOK.effort().fired();
    assertFalse(Answering.DIAGNOSIS.answer(fitting).causes().isEmpty());
    return Answering.BOOK.effort().fired() - before;
  }

  private static ObjectNode largest() {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    ObjectNode body = json.putObject("body");
    measured(body, "bust", 940);
    measured(body, "underbust", 770);
    measured(body, "upperChest", 890);
    measured(body, "bustPointWidth", 185);
    measured(body, "shoulderToBustPoint", 265);
    measured(body, "shoulderToUnderbust", 370);
    json.putObject("pattern").set("inline", sheet());
    json.put("sizeCut", "75C");
    json.putObject("garment").put("underband", "700 mm").put("bust", "860 mm");
    ObjectNode cloths = json.putObject("cloth");
    for (String role : List.of("main", "lining", "support")) {
      ObjectNode cloth = cloths.putObject(role);
      pulled(cloth.putObject("around"), "160 mm");
      pulled(cloth.putObject("along"), "140 mm");
      cloth.put("weight", "230 g/m2");
    }
    json.putObject("elastic")
        .put("width", "40 mm")
        .put("relaxed", "200 mm")
        .put("stretched", "260 mm")
        .put("load", "10 N")
        .put("full", "400 mm")
        .put("cut", "700 mm");
    json.putObject("making")
        .put("seamAllowancePlanned", "10 mm")
        .put("seamAllowanceSewn", "12 mm")
        .put("seams", 6);
    ArrayNode signs = json.putArray("signs");
    for (SignEntry entry : Answering.BOOK.catalog().signs().values()) {
      if (signs.size() < SIGNS && !entry.redFlag()) {
        ObjectNode sign = signs.addObject().put("sign", entry.id());
        if (entry.where() != null && !entry.where().isEmpty()) {
          sign.put("place", entry.where().get(0));
        }
        if (signs.size() % 3 == 0) {
          sign.put("seen", "absent");
        } else {
          sign.put("degree", "clear").put("amount", "15 mm");
        }
      }
    }
    ArrayNode earlier = json.putArray("earlier");
    Answering.BOOK.catalog().adjustments().keySet().stream()
        .limit(EARLIER)
        .forEach(
            id ->
                earlier
                    .addObject()
                    .put("adjustment", id)
                    .put("amount", "10 mm")
                    .put("outcome", earlier.size() % 2 == 0 ? "better" : "same"));
    ObjectNode about = json.putObject("circumstances");
    FittingArbitrary.CIRCUMSTANCES.forEach(one -> about.put(one, true));
    about.put("impact", "high").put("monthsSinceOperation", 6);
    ArrayNode whyNot = json.putArray("whyNot");
    Answering.BOOK.catalog().causes().keySet().stream().limit(WHY_NOT).forEach(whyNot::add);
    return json;
  }

  private static void measured(ObjectNode body, String name, int mm) {
    ArrayNode measurings = body.putArray(name);
    for (int i = 0; i < MEASURINGS; i++) {
      measurings.addObject().put("value", mm + i + " mm").put("how", "tape-self");
    }
  }

  private static void pulled(ObjectNode test, String stretched) {
    test.put("marked", "100 mm").put("stretched", stretched).put("relaxed", "103 mm");
  }

  /** The shipped sheet grown to as many sizes, pieces and trims as a sheet may have. */
  private static ObjectNode sheet() {
    ObjectNode sheet = PatternPick.QUILLMERE.deepCopy();
    ObjectNode grid = (ObjectNode) sheet.at("/sizes/grid");
    ArrayNode bands = grid.putArray("bands");
    for (int i = 0; i < BANDS; i++) {
      range(bands.addObject().put("label", "" + (65 + 5 * i)), "underbust", 625 + 50 * i, 50);
    }
    ArrayNode cups = grid.putArray("cups");
    for (int i = 0; i < CUPS; i++) {
      range(cups.addObject().put("label", "" + (char) ('A' + i)), "difference", 120 + 20 * i, 20);
    }
    ArrayNode pieces = (ArrayNode) sheet.get("pieces");
    for (int i = pieces.size(); i < PIECES; i++) {
      pieces
          .addObject()
          .put("id", "more-lining-" + i)
          .put("name", "More lining " + i)
          .put("role", "front-lining")
          .put("layer", "lining")
          .put("onFold", true)
          .put("follows", "front");
    }
    ArrayNode trims = (ArrayNode) sheet.get("trims");
    JsonNode first = trims.get(0);
    for (int i = trims.size(); i < TRIMS; i++) {
      trims.add(((ObjectNode) first.deepCopy()).put("id", "more-elastic-" + i));
    }
    return sheet;
  }

  private static void range(ObjectNode of, String name, int fromMm, int lengthMm) {
    of.putObject(name).put("from", fromMm + " mm").put("to", fromMm + lengthMm + " mm");
  }

  @Property(tries = 200)
  void no_session_is_left_open_after_an_answer(@ForAll("fittings") ObjectNode given) {
    Answering.answer(given);
    assertEquals(0, Answering.BOOK.openSessions());
  }

  @Property(tries = 50)
  void no_session_is_left_open_after_a_failure(@ForAll("withoutDanger") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    List<ReportedSign> signs = new ArrayList<>(fitting.signs());
    signs.add(new ReportedSign("no-sign-of-this-name", true, null, null, null, null, List.of()));
    Fitting unreadable = Answering.withSigns(fitting, signs);
    assertThrows(RuntimeException.class, () -> Answering.DIAGNOSIS.answer(unreadable));
    assertEquals(0, Answering.BOOK.openSessions());
  }

  @Property(tries = 10)
  void eight_threads_get_the_answers_one_gets(@ForAll("several") List<ObjectNode> given)
      throws Exception {
    List<Fitting> fittings = given.stream().map(Answering::read).toList();
    List<Answer> alone = fittings.stream().map(Answering.DIAGNOSIS::answer).toList();
    ExecutorService threads = Executors.newFixedThreadPool(8);
    try {
      Callable<List<Answer>> all =
          () -> fittings.stream().map(Answering.DIAGNOSIS::answer).toList();
      for (Future<List<Answer>> answers : threads.invokeAll(Collections.nCopies(8, all))) {
        assertEquals(alone, answers.get());
      }
    } finally {
      threads.shutdown();
    }
    assertEquals(0, Answering.BOOK.openSessions());
  }

  /** A danger is answered before signs are looked up. */
  @Provide
  Arbitrary<ObjectNode> withoutDanger() {
    return FittingArbitrary.withoutDanger();
  }

  @Provide
  Arbitrary<ObjectNode> fittings() {
    return FittingArbitrary.any();
  }

  @Provide
  Arbitrary<List<ObjectNode>> several() {
    return FittingArbitrary.any().list().ofSize(10);
  }
}
