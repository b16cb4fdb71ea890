package easewright.rulebook;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * How a teacher says what an answer holds, in one language: a folder of {@code rules/voice}.
 *
 * @param causes every cause, by id
 * @param changes every adjustment, by id
 * @param cautions every caution, by id
 * @param phrases what is said beside them: key to one or more ways of saying it
 * @param questions what is asked about a sign, by its id; others are asked in the catalog's words
 * @param clues how a sign is named as a reason, by its id; others are never named
 * @param talk how a reply is put together
 */
public record Voice(
    Map<String, CauseWords> causes,
    Map<String, ChangeWords> changes,
    Map<String, CautionWords> cautions,
    Map<String, List<String>> phrases,
    Map<String, String> questions,
    Map<String, Clue> clues,
    Talk talk) {

  /**
   * A cause.
   *
   * @param so a clause: it stands after "most likely"
   * @param perhaps a noun: it stands after "it could be"
   */
  public record CauseWords(String so, String perhaps) {}

  /**
   * A change, as one would ask somebody to make it.
   *
   * @param does with the blank {amount}, where it has one
   * @param bare the same without an amount
   * @param trial what can be tried before anything is cut or unpicked; null where there is nothing
   * @param test the same where nothing else is advised yet, with the blank {amount}; null where
   *     nothing that is easily undone would tell
   * @param shows what the test shows where the cause is the right one; null without a test
   * @param check what shows that it helped
   * @param shownBy signs that only somebody who has made the trial could have seen; null for none
   * @param next what to do before it is sewn for good once the trial has been made; or null
   */
  public record ChangeWords(
      String does,
      String bare,
      String trial,
      String test,
      String shows,
      String check,
      List<String> shownBy,
      String next) {
    public ChangeWords {
      shownBy = shownBy == null ? List.of() : List.copyOf(shownBy);
    }
  }

  /**
   * A sign as the reason for a cause.
   *
   * @param seen a clause, where it was seen
   * @param not the same where it was looked for and not seen; null where that is no reason
   */
  public record Clue(String seen, String not) {}

  /**
   * A caution.
   *
   * @param says what it is about
   * @param ask whom to ask, and how soon
   * @param about what to mention to them beside something graver; null where it matters only to the
   *     fit
   * @param then when the fit may be looked at again, to stand before "I'd"; null where no change is
   *     named beside it
   */
  public record CautionWords(String says, String ask, String about, String then) {}

  /**
   * How a reply is put together.
   *
   * @param sure probability from which a cause is said as sure
   * @param likely the same as likely; below, it is a guess
   * @param alone how many times as likely as the next cause one must be to be named alone
   * @param both what the probabilities of two causes add up to where both are said to be there
   * @param tests signs that only a test of her own tells
   * @param roomier changes that give room
   * @param pieces words of the ids of signs that name a piece
   * @param size probability from which a size is named alone
   * @param denials how many things looked for and not seen make "nothing is wrong" sure
   * @param doubted confidence of a reading below which it is asked about
   * @param quoted how many words of hers that were not understood may be quoted
   * @param placed how many words at most may be quoted to ask where she sees it
   * @param crafts what is said of common questions about sewing that are none of fit
   * @param usual words that a short reply usually has at most
   * @param most words that it has at most, whatever it says
   * @param directions what may be asked for, such as "larger", to the changes that go that way
   * @param alike groups of changes that one phrase may mean
   * @param oneSided changes made on one side alone, or on each side by its own
   * @param nextOne changes for the next garment
   * @param then changes after which the next one is told as well
   * @param presupposes a sign to signs of which one must be seen before it can be asked about
   * @param edges where an elastic is, by the word for the piece in ids of signs; "" elsewhere
   * @param things what may be asked about
   */
  public record Talk(
      double sure,
      double likely,
      double alone,
      double both,
      List<String> tests,
      List<String> roomier,
      List<String> pieces,
      double size,
      int denials,
      double doubted,
      Words quoted,
      int placed,
      List<String> thanking,
      List<Craft> crafts,
      int usual,
      int most,
      Map<String, List<String>> directions,
      List<List<String>> alike,
      List<String> oneSided,
      List<String> nextOne,
      List<String> then,
      Map<String, List<String>> presupposes,
      Map<String, String> edges,
      Map<String, Thing> things) {
    /** Whether a text has a word of thanks. */
    public boolean thanks(String text) {
      return words(text).anyMatch(thanking::contains);
    }

    /** What is said of the first common question about sewing that a text names. */
    public Optional<String> craft(String text) {
      return crafts.stream()
          .filter(one -> words(text).anyMatch(one.words()::contains))
          .findFirst()
          .map(Craft::says);
    }

    private static Stream<String> words(String text) {
      return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^a-z']+"));
    }
  }

  /**
   * A common question about sewing that is none of fit: thread, machine, price.
   *
   * @param words any of which names it, in small letters
   * @param says the answer
   */
  public record Craft(List<String> words, String says) {}

  /**
   * A number of words.
   *
   * @param from at least
   * @param to at most
   */
  public record Words(int from, int to) {}

  /**
   * Something that may be asked about: "is it the cloth?"
   *
   * @param name how it is called
   * @param areas areas of the causes that make it so; null for none
   * @param causes further such causes; null for none
   */
  public record Thing(String name, List<String> areas, List<String> causes) {

    /** Whether this cause makes it so. */
    public boolean isMeantBy(Catalog.CauseEntry cause) {
      return areas != null && areas.contains(cause.area())
          || causes != null && causes.contains(cause.id());
    }
  }

  /** The language replies are said in. */
  public static final String USUAL = "en";

  /** The files of a language, without their ending, each with a schema of its name. */
  public static final List<String> FILES =
      List.of("causes", "changes", "cautions", "phrases", "questions", "clues", "talk");

  /** Those of them that the folder of a family may have for its own names. */
  public static final Set<String> OF_FAMILIES =
      Set.of("causes", "changes", "cautions", "questions", "clues");

  /**
   * Reads the usual language: the book's own words, and those that the folders of families have for
   * their causes, changes, cautions and signs.
   *
   * @param families ids of families
   */
  static Voice read(Path book, Collection<String> families, YAMLMapper yaml) throws IOException {
    Path folder = book.resolve("voice/" + USUAL);
    return new Voice(
        joined(book, families, "causes", yaml, new TypeReference<>() {}),
        joined(book, families, "changes", yaml, new TypeReference<>() {}),
        joined(book, families, "cautions", yaml, new TypeReference<>() {}),
        read(folder, "phrases", yaml, new TypeReference<>() {}),
        joined(book, families, "questions", yaml, new TypeReference<>() {}),
        joined(book, families, "clues", yaml, new TypeReference<>() {}),
        read(folder, "talk", yaml, new TypeReference<>() {}));
  }

  private static <T> Map<String, T> joined(
      Path book,
      Collection<String> families,
      String file,
      YAMLMapper yaml,
      TypeReference<Map<String, T>> type)
      throws IOException {
    Map<String, T> all =
        new LinkedHashMap<>(read(book.resolve("voice/" + USUAL), file, yaml, type));
    for (String family : families) {
      Path folder = book.resolve(family + "/voice/" + USUAL);
      if (Files.exists(folder.resolve(file + ".yaml"))) {
        all.putAll(read(folder, file, yaml, type));
      }
    }
    return all;
  }

  private static <T> T read(Path folder, String file, YAMLMapper yaml, TypeReference<T> type)
      throws IOException {
    Path path = folder.resolve(file + ".yaml");
    if (!Files.exists(path)) {
      throw new RuleBookFault("The file " + path.getFileName() + " is missing in voice/.");
    }
    return yaml.readValue(Files.readString(path), type);
  }
}
