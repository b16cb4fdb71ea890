package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.packaged.NodePrograms.Ran;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;

/** A stranger's programs, typed by the contract, get from the service what the contract shows. */
@Tag("long")
@EnabledIf(value = "easewright.packaged.NodePrograms#canRun", disabledReason = NodePrograms.NEEDED)
class ExampleProgramsIT {
  private static final Path EXAMPLES = Path.of("openapi/examples");
  private static final String RIDES_UP = "The band rides up at the back.";
  private static PackagedService service;

  @BeforeAll
  static void buildAndStart() throws Exception {
    NodePrograms.build();
    service = PackagedService.start();
  }

  @AfterAll
  static void stop() {
    if (service != null) {
      service.close();
    }
  }

  @Test
  void the_make_along_prints_the_size_the_cloth_and_the_change_that_are_recorded()
      throws Exception {
    List<String> told =
        NodePrograms.succeeded(run("", "make-along", service.address().toString()))
            .out()
            .lines()
            .toList();

    JsonNode fitting = recorded("first-fitting");
    List<String> expected = new ArrayList<>();
    for (JsonNode cloth : recorded("cut-plan-whole").get("buy")) {
      expected.add(
          "To buy: %s of %s."
              .formatted(cloth.at("/buy/text").textValue(), cloth.get("name").textValue()));
    }
    for (JsonNode cause : fitting.get("causes")) {
      expected.add(
          "Likely: %s (%d %%)"
              .formatted(
                  cause.get("name").textValue(),
                  Math.round(100 * cause.get("probability").doubleValue())));
    }
    expected.add("Change: " + fitting.at("/adjustments/0/does").textValue());

    String size = "Size to cut: " + fitting.at("/size/recommended/size").textValue() + ".";
    assertTrue(told.get(0).startsWith(size), told.get(0));
    assertEquals(
        expected,
        told.stream().filter(line -> line.matches("(To buy|Likely|Change): .*")).toList());
  }

  @Test
  void a_request_the_contract_refuses_does_not_compile() throws Exception {
    Path wrong = NodePrograms.FOLDER.resolve("generated/wrong.ts");
    Files.writeString(
        wrong,
        """
        import { easewright } from "../easewright.js";
        await easewright("").POST("/v1/fittings", { body: { signs: [{ sign: "straps-dig-in", seen: "maybe" }] } });
        """);
    Ran compiled =
        NodePrograms.run(
            "",
            "npx",
            "tsc",
            "--noEmit",
            "--strict",
            "--target",
            "es2022",
            "--module",
            "nodenext",
            "--types",
            "node",
            "generated/wrong.ts");
    Files.delete(wrong);

    assertNotEquals(0, compiled.exit());
    assertTrue(compiled.out().contains("'\"maybe\"' is not assignable"), compiled::out);
  }

  @Test
  void the_chat_helper_tells_a_fault_with_its_place_and_remedy_and_goes_on() throws Exception {
    Ran chat =
        chat(
            "Which thread is best for a leather jacket?\n\n" + RIDES_UP,
            service.address().toString());

    assertTrue(
        chat.out().contains("\n  /text: This does not read as a question about the fit"),
        chat::out);
    assertTrue(chat.out().contains("It could be band too long"), chat::out);
  }

  @Test
  void what_one_message_told_goes_along_with_the_next() throws Exception {
    try (BusyAtFirst gateway = new BusyAtFirst(service.address(), 0, 503)) {
      chat(RIDES_UP + "\n\nNo.\n\nThe straps dig in too.", gateway.address());

      List<JsonNode> asked = new ArrayList<>();
      for (String body : gateway.asked()) {
        asked.add(new ObjectMapper().readTree(body));
      }
      // Each message is asked about twice: for what to go on from, and for the reply.
      JsonNode denial = asked.get(2);
      JsonNode last = asked.get(4);
      assertEquals("No.", denial.path("text").textValue());
      assertEquals("The straps dig in too.", last.path("text").textValue());
      assertEquals(
          List.of("band-rides-up-at-the-back", denial.path("asked").textValue()),
          last.path("signs").findValuesAsText("sign"));
      assertEquals(List.of("present", "absent"), last.path("signs").findValuesAsText("seen"));
      assertTrue(last.has("asked"), last::toString);
    }
  }

  @Test
  void a_busy_service_is_asked_again_when_it_says() throws Exception {
    try (BusyAtFirst busy = new BusyAtFirst(service.address(), 2, 503)) {
      Ran chat = chat(RIDES_UP, busy.address());

      assertTrue(chat.out().contains("the band is a bit too long"), chat::out);
      assertEquals(2, chat.err().lines().filter("Busy; trying again in 1 s."::equals).count());
    }
  }

  @Test
  void a_service_that_stays_busy_is_given_up_after_four_tries() throws Exception {
    try (BusyAtFirst busy = new BusyAtFirst(service.address(), Integer.MAX_VALUE, 429)) {
      Ran chat = chat(RIDES_UP, busy.address());

      assertEquals("Busy. Come again.\n", chat.out());
      assertEquals(4, busy.asked().size());
    }
  }

  private static Ran chat(String messages, String address)
      throws IOException, InterruptedException {
    return NodePrograms.succeeded(run(messages, "chat", address));
  }

  private static Ran run(String in, String program, String address)
      throws IOException, InterruptedException {
    return NodePrograms.run(in, "node", "built/" + program + ".js", address);
  }

  private static JsonNode recorded(String example) throws IOException {
    return new ObjectMapper().readTree(EXAMPLES.resolve(example + ".answer.json").toFile());
  }
}
