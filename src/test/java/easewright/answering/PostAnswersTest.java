package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheets;
import easewright.reading.TrainedReader;
import easewright.rulebook.RuleBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Answers to posts of strangers, read by the words, by both readers, and as if they were read
 * without a mistake, so that the errors of reading and of judging are seen apart. Expectations are
 * each writer's own (common practice). Writes {@code target/answers-*.md}; of posts kept aside,
 * sums alone.
 */
@Tag("long")
class PostAnswersTest {
  private static final Edition WORDS = Edition.of(RuleBook.compiledIn(), new PatternSheets());
  private static final Edition BOTH =
      WORDS.readingWith(
          Optional.ofNullable(System.getProperty("easewright.reader.trial"))
              .map(Path::of)
              .map(TrainedReader::in)
              .orElseGet(TrainedReader::shipped));

  @ParameterizedTest
  @ValueSource(
      strings = {
        "posts-strangers/e1",
        "posts-strangers/e3",
        "posts-strangers/e4",
        "posts-strangers/e6",
        "posts-strangers/e7",
        "posts-strangers/e8",
        "posts-strangers/e9",
        "posts-strangers/e10",
        "posts-strangers-aside/e2",
        "posts-strangers-aside/e5",
      })
  void both_readers_together_lead_to_better_answers_than_the_words(String set) throws IOException {
    AnswersCount words = new AnswersCount();
    AnswersCount both = new AnswersCount();
    AnswersCount labels = new AnswersCount();
    for (ExpectedAnswer post : ExpectedAnswer.in(set)) {
      words.addText(post, WORDS);
      both.addText(post, BOTH);
      labels.addLabels(post, WORDS);
    }
    StringBuilder report = new StringBuilder(AnswersCount.HEAD);
    report.append(words.row("words")).append(both.row("both")).append(labels.row("labels"));
    if (!set.contains("-aside")) {
      report.append("\nRead by both:\n\n");
      both.misses.forEach(report::append);
      report.append("\nLabels:\n\n");
      labels.misses.forEach(report::append);
      ReadingLosses losses = new ReadingLosses(BOTH);
      for (ExpectedAnswer post : ExpectedAnswer.in(set)) {
        losses.add(post);
      }
      report.append("\nLost in reading:\n\n").append(losses.report());
    }
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", "answers-" + set.replace('/', '-') + ".md"), report);
    assertTrue(both.first > words.first, report::toString);
    assertTrue(both.dangersStopped >= words.dangersStopped, report::toString);
  }
}
