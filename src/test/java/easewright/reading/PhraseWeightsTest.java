package easewright.reading;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.UsualBook;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The plain reader reads in Java what Python trained. */
class PhraseWeightsTest {
  private static final float[] UNSAID = {0.2f, 0.1f, 0.1f, 0.2f, 0.1f, 0.1f};

  private static ReaderSettings settings() throws IOException {
    return ReaderSettings.parse(ReaderFiles.shipped().read("reader.json"));
  }

  private static PhraseWeights shipped() throws IOException {
    try (InputStream file = ReaderFiles.shipped().open("phrases.bin")) {
      return new PhraseWeights(file, settings().signs().size(), settings().phrases());
    }
  }

  /** Two signs: the first known by one word, in steps of a half; the second not read. */
  private static PhraseWeights known(String feature) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream file = new DataOutputStream(bytes);
    file.writeInt(2);
    file.writeFloat(-3);
    file.writeFloat(Float.NaN);
    file.writeFloat(0.5f);
    file.writeInt(1);
    file.writeInt(1);
    file.writeInt(PhraseWeights.hash(feature));
    file.writeShort(1);
    file.writeShort(0);
    file.writeByte(20);
    return new PhraseWeights(
        new ByteArrayInputStream(bytes.toByteArray()),
        2,
        new ReaderSettings.Phrases(List.of("s"), Set.of("the"), 0, 1, 1));
  }

  /** Values from RFC 9923, "The FNV Non-Cryptographic Hash Algorithm" (from memory). */
  @Test
  void features_are_hashed_by_fnv_1a() {
    assertEquals(0x811C9DC5, PhraseWeights.hash(""));
    assertEquals(0xE40C292C, PhraseWeights.hash("a"));
    assertEquals(0xBF9CF968, PhraseWeights.hash("foobar"));
  }

  /** The reference is what {@code phrases.py} makes of odd texts, written by reference.py. */
  @Test
  void features_are_those_of_the_reference() throws IOException {
    PhraseWeights phrases = shipped();
    try (InputStream file = PhraseWeightsTest.class.getResourceAsStream("reference.json")) {
      for (JsonNode one : new ObjectMapper().readTree(file)) {
        String text = one.path("text").textValue();
        assertEquals(names(one.path("own")), phrases.own(text), text);
        assertEquals(names(one.path("before")), phrases.before(text), text);
      }
    }
  }

  private static Set<String> names(JsonNode list) {
    Set<String> names = new TreeSet<>();
    list.forEach(one -> names.add(one.textValue()));
    return names;
  }

  /** By hand: odds 0.2 : 0.8 are -1.386; the bias is -3, the word weighs 20 · 0.5 / √1. */
  @Test
  void a_word_makes_its_sign_likelier_and_its_lack_less_likely() throws IOException {
    float[] said = known("u strap").with(UNSAID, "The straps", "");
    // The small word counts among the features of the sentence: √2.
    assertEquals(1 / (1 + Math.exp(1.386 + 3 - 10 / Math.sqrt(2))), said[0], 1e-3);
    assertTrue(known("u strap").with(UNSAID, "the band", "the straps")[0] < UNSAID[0]);
    assertTrue(known("c strap").with(UNSAID, "It slips", "the straps")[0] > UNSAID[0]);
  }

  @Test
  void what_is_denied_or_in_doubt_or_not_read_stays_as_the_model_read_it() throws IOException {
    float[] said = known("u strap").with(UNSAID, "straps", "");
    assertArrayEquals(
        Arrays.copyOfRange(UNSAID, 1, UNSAID.length), Arrays.copyOfRange(said, 1, said.length));
  }

  /** Dangers are raised and lowered by the model and the words alone (common practice). */
  @Test
  void the_shipped_phrases_read_no_danger() throws IOException {
    Map<String, SignEntry> catalog = UsualBook.read().catalog().signs();
    ReaderSettings settings = settings();
    float[] said = new float[settings.signs().size() * SentenceSaid.STATES];
    Arrays.fill(said, 0.3f);
    float[] read = shipped().with(said, "My chest hurts, I cannot breathe and I fainted.", "");
    int changed = 0;
    for (int i = 0; i < settings.signs().size(); i++) {
      String sign = settings.signs().get(i);
      boolean same = read[i * SentenceSaid.STATES] == 0.3f;
      changed += same ? 0 : 1;
      if (catalog.get(sign).redFlag() || settings.joining().nearDangers().contains(sign)) {
        assertTrue(same, sign);
      }
    }
    assertTrue(changed > 100, "signs read by phrases: " + changed);
  }

  @Test
  void a_file_for_other_signs_or_cut_short_is_refused() throws IOException {
    byte[] file = ReaderFiles.shipped().read("phrases.bin");
    int signs = settings().signs().size();
    assertThrows(IllegalArgumentException.class, () -> read(file, signs + 1));
    assertThrows(IOException.class, () -> read(Arrays.copyOf(file, file.length / 2), signs));
  }

  private static PhraseWeights read(byte[] file, int signs) throws IOException {
    return new PhraseWeights(new ByteArrayInputStream(file), signs, settings().phrases());
  }
}
