package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.intake.QuestionsByModel.Asked;
import easewright.reading.TrainedReader;
import easewright.rulebook.UsualBook;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Questions in words that no phrase of the rule book holds, by the model that ships. */
class QuestionsByModelTest {
  private static final Intake INTAKE = new Intake(UsualBook.read());
  private static final Optional<TrainedReader> MODEL = Optional.of(TrainedReader.shipped());
  private static final String FAULT = "The band of my soft bra rides up at the back all day. ";

  /** Kinds as a teacher would name them (common practice); invented here, learnt nowhere. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Ought I to do this to the other shoulder also?|sides|",
        "What sort of elastic ought one to purchase?|buy|",
      })
  void it_reads_questions_that_the_words_do_not(String question, String kind, String about) {
    List<QuestionRead> byWords = asked(question, Optional.empty());
    List<QuestionRead> read = asked(question, MODEL);

    assertEquals(
        0, byWords.stream().filter(one -> one.kind().equals(kind)).count(), byWords::toString);
    assertEquals(kind, read.get(0).kind(), read::toString);
    assertEquals(about, read.get(0).about(), read::toString);
  }

  @Test
  void without_a_model_the_words_reading_stays() {
    Asked words = new Asked(List.of(), List.of(new QuestionRead("do", null, null)));

    assertEquals(words, new QuestionsByModel(Set.of()).joined(words, Optional.empty()));
  }

  private static List<QuestionRead> asked(String question, Optional<TrainedReader> model) {
    return INTAKE.read(FAULT + question, null, model).told().questions();
  }
}
