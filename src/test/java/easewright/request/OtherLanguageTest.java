package easewright.request;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.english.OtherLanguage;
import easewright.number.WordLists;
import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A post in another language is named, and not misread (languages from memory). */
class OtherLanguageTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final TextReader READER = new TextReader(BOOK, new PatternSheets());
  private static final OtherLanguage LANGUAGES =
      new OtherLanguage(new WordLists(BOOK.everyday().reader()));

  private static ObjectNode request(String text) {
    return JsonNodeFactory.instance.objectNode().put("text", text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "German | Das Band rutscht hinten hoch, aber die Träger sind nicht zu eng. Was muss ich"
            + " ändern?",
        "French | La bande remonte dans le dos mais les bretelles ne sont pas trop courtes. Que"
            + " faire ?",
        "Spanish | La banda se sube por la espalda y los tirantes están muy flojos, ¿qué hago con"
            + " mi sujetador?",
        "Italian | La fascia sale dietro sulla schiena ma le spalline non sono troppo corte. Cosa"
            + " devo fare con il reggiseno?",
        "Dutch | De band kruipt achter omhoog maar de bandjes zijn niet te strak. Wat moet ik met"
            + " mijn naad?",
        "Portuguese | A faixa sobe nas costas mas as alças não estão muito apertadas. Como faço com"
            + " o meu sutiã?",
        "Polish | Obwód podjeżdża na plecach, ale ramiączka nie są za ciasne. Jak to zmienić w"
            + " biustonosz?",
        "Swedish | Bandet glider upp bak men axelbanden är inte för korta. Vad kan jag göra med min"
            + " bh?",
      })
  void a_post_in_another_language_is_named(String language, String text) {
    assertEquals(Optional.of(language), LANGUAGES.of(text));
    IntakeAnswer read = READER.readAnything(request(text));
    assertEquals(IntakeAnswer.OTHER, read.kind());
    assertTrue(read.readYourself().get(0).why().contains(language), read::toString);
    FaultyRequest refused =
        assertThrows(FaultyRequest.class, () -> READER.read(request(text)), text);
    assertTrue(refused.faults().toString().contains(language), refused.faults()::toString);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Hallo, the Band of my BH rides up at the back, danke und viele Grüße!",
        "my bra elastic was kulang, so the neckline cuts in. Sayang kasi.",
        "Merci beaucoup! The straps of the bra slip off.",
        "Band rides up",
        "36B, bust 94, under 79",
      })
  void a_few_foreign_words_make_no_other_language(String text) {
    assertEquals(Optional.empty(), LANGUAGES.of(text));
  }

  @Test
  void no_english_post_of_this_project_is_taken_for_another_language() throws IOException {
    for (String folder : List.of("posts", "posts-later", "posts-strangers", "dangers")) {
      try (Stream<Path> files = Files.list(Path.of("src/test/resources", folder))) {
        for (Path file : files.toList()) {
          for (String paragraph : Files.readString(file).split("\\n- ")) {
            assertEquals(Optional.empty(), LANGUAGES.of(paragraph), paragraph);
          }
        }
      }
    }
  }

  @Test
  void a_danger_in_english_beside_another_language_still_stands() {
    IntakeAnswer read =
        READER.readAnything(
            request(
                "Das Band rutscht hinten hoch, aber die Träger sind nicht zu eng und ich habe noch"
                    + " was: my left hand goes numb."));
    assertTrue(read.fitting().toString().contains("numb-or-tingling-arm-or-hand"), read::toString);
  }
}
