package easewright.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.LogListening;
import easewright.deadline.Deadline;
import easewright.deadline.DeadlinePassed;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Reading by a model, with a tiny one in which single words stand for what is said of a sign: see
 * {@code src/training/reader/tiny.py}.
 */
class TrainedReaderTest extends LogListening {
  private static final Path TINY = Path.of("src/test/resources/easewright/reading/tiny");
  private static final TrainedReader READER = TrainedReader.in(TINY);
  private static final String RIDES_UP = "band-rides-up-at-the-back";
  private static final String SLIPS = "straps-slip-off";

  private static List<String> where(String text, String sign, ToDoubleFunction<Said> what) {
    return READER.read(text).orElseThrow().sentences().stream()
        .filter(one -> what.applyAsDouble(one.said(sign)) > 0.5)
        .map(one -> text.substring(one.from(), one.to()))
        .toList();
  }

  @Test
  void each_sentence_says_what_it_says() {
    String text = "The alpha. The theta!\n\n  The lambda and gamma  ";
    assertEquals(List.of("The alpha."), where(text, RIDES_UP, Said::reported));
    assertEquals(List.of("The theta!"), where(text, SLIPS, Said::denied));
    assertEquals(List.of("The lambda and gamma"), where(text, SLIPS, Said::doubtful));
    assertEquals(List.of("The lambda and gamma"), where(text, RIDES_UP, Said::doubtful));
    assertEquals(List.of(), where(text, "fever", Said::reported));
  }

  @Test
  void a_text_without_sentences_says_nothing() {
    assertEquals(List.of(), READER.read(" . ").orElseThrow().sentences());
    assertEquals(List.of(), READER.read("\u0301\u0302").orElseThrow().sentences());
  }

  /** The shipped model made a guessed size of the letters of a mere size. */
  @Test
  void a_sentence_without_a_word_says_nothing() throws IOException {
    TrainedReader shipped = TrainedReader.in(Path.of("src/main/resources/easewright/reading"));
    List<String> signs = ReaderSettings.parse(ReaderFiles.shipped().read("reader.json")).signs();
    SentenceSaid size = shipped.read("Straps dig in. 34C.").orElseThrow().sentences().get(1);
    assertEquals(List.of(), signs.stream().filter(sign -> size.said(sign).reported() > 0).toList());
  }

  /** The tiny model takes 40 pieces and four sentences at once. */
  @Test
  void every_sentence_of_a_long_text_is_read_once_in_its_place() {
    StringBuilder text = new StringBuilder();
    List<String> reported = new ArrayList<>();
    List<String> all = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      String sentence = "the ".repeat(i % 13) + (i % 3 == 0 ? "alpha" : "delta") + i + ".";
      sentence = sentence.replace("alpha" + i, "alpha " + i).replace("delta" + i, "delta " + i);
      all.add(sentence);
      if (i % 3 == 0) {
        reported.add(sentence);
      }
      text.append(sentence).append(' ');
    }
    String post = text.toString();
    assertEquals(reported, where(post, RIDES_UP, Said::reported));
    assertEquals(
        all,
        READER.read(post).orElseThrow().sentences().stream()
            .map(one -> post.substring(one.from(), one.to()))
            .toList());
  }

  @Test
  void a_writer_without_full_stops_is_read_to_the_end() {
    String text = "alpha " + "the ".repeat(300) + "delta " + "the and ".repeat(100) + "theta";
    assertEquals(1, where(text, RIDES_UP, Said::reported).size());
    assertTrue(where(text, RIDES_UP, Said::reported).get(0).startsWith("alpha"));
    assertEquals(1, where(text, SLIPS, Said::reported).size());
    assertTrue(where(text, SLIPS, Said::denied).get(0).endsWith("theta"));
    String oneWord = "!".repeat(500) + "😀".repeat(500);
    assertEquals(
        oneWord,
        READER.read(oneWord).orElseThrow().sentences().stream()
            .map(one -> oneWord.substring(one.from(), one.to()))
            .collect(Collectors.joining()));
  }

  @Test
  void no_passage_is_larger_than_the_limits_and_all_but_the_first_begin_with_what_went_before()
      throws IOException {
    ReaderSettings.Limits limits =
        ReaderSettings.parse(Files.readAllBytes(TINY.resolve("reader.json"))).limits();
    WordPieces pieces = new WordPieces(Files.readString(TINY.resolve("vocabulary.txt")));
    String text = "the and the and the and alpha. the the the the beta. ".repeat(20);
    List<Passage> passages = Passage.of(text, List.of(), pieces, limits);
    assertTrue(passages.size() > 5, "passages");
    List<Integer> before = List.of();
    for (Passage passage : passages) {
      assertTrue(passage.ids().size() <= limits.pieces(), "pieces");
      assertTrue(passage.sentences().size() <= limits.sentences(), "sentences");
      int first = passage.sentences().get(0).from();
      assertEquals(
          before.subList(Math.max(0, before.size() - limits.piecesOfContext()), before.size()),
          passage.ids().subList(1, Math.max(1, first - 1)));
      Passage.Asked last = passage.sentences().get(passage.sentences().size() - 1);
      before = passage.ids().subList(last.from(), last.to());
    }
  }

  @Test
  void reading_stops_when_the_time_is_over() {
    READER.read("alpha");
    assertThrows(
        DeadlinePassed.class,
        () -> Deadline.within(Duration.ofNanos(1), () -> READER.read("The alpha.")));
  }

  @Test
  void a_missing_model_reads_nothing_and_says_so_once(@TempDir Path empty) {
    TrainedReader reader = TrainedReader.in(empty);
    assertEquals(Optional.empty(), reader.read("The alpha."));
    assertEquals(Optional.empty(), reader.read("The alpha."));
    assertEquals(1, offLines().size(), log.lines().toString());
  }

  @Test
  void a_broken_model_reads_nothing_and_says_so_once(@TempDir Path folder) throws IOException {
    for (String name : List.of("reader.json", "vocabulary.txt", "reader.onnx")) {
      Files.copy(TINY.resolve(name), folder.resolve(name));
    }
    assertTrue(TrainedReader.in(folder).read("alpha").isPresent());

    byte[] model = Files.readAllBytes(folder.resolve("reader.onnx"));
    Files.write(folder.resolve("reader.onnx"), List.of("this is no model"));
    assertEquals(Optional.empty(), TrainedReader.in(folder).read("alpha"));
    Files.write(folder.resolve("reader.onnx"), model);

    String settings = Files.readString(folder.resolve("reader.json"));
    Files.writeString(folder.resolve("reader.json"), settings.replace("\"fever\",", ""));
    assertEquals(Optional.empty(), TrainedReader.in(folder).read("alpha"), "too few signs");
    Files.writeString(folder.resolve("reader.json"), "{");
    assertEquals(Optional.empty(), TrainedReader.in(folder).read("alpha"), "no JSON");
    Files.writeString(folder.resolve("reader.json"), settings);

    Files.writeString(folder.resolve("vocabulary.txt"), "alpha\nbeta\n");
    assertEquals(Optional.empty(), TrainedReader.in(folder).read("alpha"), "no vocabulary");
    assertEquals(4, offLines().size(), log.lines().toString());
  }

  private List<String> offLines() {
    return log.lines().stream().filter(line -> line.contains("read by words alone")).toList();
  }

  @Test
  void threads_that_read_at_once_read_the_same() throws Exception {
    TrainedReader fresh = TrainedReader.in(TINY);
    String text = "The alpha. The theta!";
    ExecutorService threads = Executors.newFixedThreadPool(8);
    try {
      Callable<List<Said>> reading = () -> slips(fresh, text);
      for (Future<List<Said>> one : threads.invokeAll(Collections.nCopies(200, reading))) {
        assertEquals(slips(READER, text), one.get());
      }
    } finally {
      threads.shutdownNow();
    }
  }

  private static List<Said> slips(TrainedReader reader, String text) {
    return reader.read(text).orElseThrow().sentences().stream()
        .map(one -> one.said(SLIPS))
        .toList();
  }
}
