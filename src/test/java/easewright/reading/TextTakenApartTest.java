package easewright.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/**
 * The model was trained on texts as Python took them apart. The reference is what {@code
 * src/training/reader/text.py} makes of them, written by {@code reference.py} beside it.
 */
class TextTakenApartTest {
  private static final List<JsonNode> REFERENCE = reference();
  private static final WordPieces PIECES = new WordPieces(vocabulary());

  private static List<JsonNode> reference() {
    try (InputStream file = TextTakenApartTest.class.getResourceAsStream("reference.json")) {
      List<JsonNode> texts = new ArrayList<>();
      new ObjectMapper().readTree(file).forEach(texts::add);
      return texts;
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static String vocabulary() {
    try (InputStream file = WordPieces.class.getResourceAsStream("vocabulary.txt")) {
      return new String(file.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static List<Integer> ids(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false).map(JsonNode::intValue).toList();
  }

  @Test
  void sentences_are_those_of_the_reference() {
    assertTrue(REFERENCE.size() > 150, "texts");
    for (JsonNode one : REFERENCE) {
      String text = one.path("text").textValue();
      List<String> wanted = new ArrayList<>();
      one.path("sentences").forEach(sentence -> wanted.add(sentence.path("text").textValue()));
      assertEquals(
          wanted,
          Sentences.in(text).stream().map(part -> text.substring(part.from(), part.to())).toList(),
          text);
    }
  }

  @Test
  void pieces_are_those_of_the_reference() {
    for (JsonNode one : REFERENCE) {
      assertEquals(
          ids(one.path("ids")), PIECES.of(one.path("text").textValue()), one.path("text").asText());
      for (JsonNode sentence : one.path("sentences")) {
        String text = sentence.path("text").textValue();
        assertEquals(ids(sentence.path("ids")), PIECES.of(text), text);
      }
    }
  }
}
